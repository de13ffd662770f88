import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { IDENTITY, type Vector, axis, cross, dot, length, scale } from '../../assembly/placing/Transform.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { SetupGlass } from '../subjects.ts';
import { isCamera } from './buildsInUse.ts';

/** How a build is held where its weight turns a joint most. */
export interface Attitude {
  /** Of the weight about the joint's axis. */
  readonly leverMm: number;
  /** "held on its side". */
  readonly says: string;
}

/**
 * The attitude, of those that a build comes into, in which weight turns a joint most. `lever` is the joint's axis crossed with the way to the centre
 * of mass, mm: along a direction of gravity it is the lever that weight has about that axis. A station stands upright; on a head or legs a camera tilts
 * and pans, but does not roll, so that gravity lies in the plane of the vertical and the line of sight; every other build comes into any attitude.
 */
export function worstAttitude(ledger: Ledger, subject: SetupGlass, build: string, lever: Vector): Attitude {
  const sight = sightOf(ledger, subject);
  const across = cross(UP, sight);
  const [up, along, aside] = [dot(lever, UP), dot(lever, sight), dot(lever, across)];
  if (!isCamera(ledger, subject, build)) return { leverMm: Math.abs(up), says: 'upright' };
  if (ledger.at(`builds/${build}/purpose`) === 'tripod') return { leverMm: Math.hypot(up, along), says: tilted(up, along) };
  return { leverMm: Math.hypot(up, along, aside), says: inWords(up, along, aside) };
}

const UP: Vector = [0, 1, 0];

/** Level, ahead as the camera looks. */
function sightOf(ledger: Ledger, { setup, glass }: SetupGlass): Vector {
  const { body } = opticalPath(ledger, setup, glass);
  const place = body === undefined ? undefined : placeSetup(ledger, setup, glass).places.get(body.ref);
  const [x, , z] = axis((place ?? IDENTITY).r, 2);
  const far = length([x, 0, z]);
  // A camera placed looking straight up or down: ahead of the build.
  return far < 1e-6 ? [0, 0, 1] : scale([x, 0, z], 1 / far);
}

/** Gravity points down in the picture, or level: of the two senses of the lever the one that does. */
function tilted(up: number, along: number): string {
  const downDeg = (Math.atan2(up > 0 ? -along : along, Math.abs(up)) * 180) / Math.PI;
  const deg = Math.round(downDeg / 5) * 5;
  if (deg === 0) return 'level';
  return Math.abs(deg) >= 85 ? 'looking straight up or down' : `tilted ${Math.abs(deg)}° ${deg > 0 ? 'down' : 'up'}`;
}

/** Shares below this are not worth the words: within 15°. */
const SLIGHT = 0.26;

function inWords(up: number, along: number, aside: number): string {
  const all = Math.hypot(up, along, aside);
  if (Math.abs(aside) <= SLIGHT * all) return tilted(up, along);
  if (Math.abs(along) > SLIGHT * all) return 'tilted and leaned over';
  return Math.abs(up) <= SLIGHT * all ? 'held on its side' : 'leaned over to its side';
}
