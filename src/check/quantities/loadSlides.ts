import { axisOf, onlyPushes } from '../../assembly/mates.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import type { RigJoint } from '../../assembly/placing/rigJoints.ts';
import { type TreeStep, rangeOf } from '../../assembly/placing/rigModel.ts';
import { IDENTITY, type Vector, axis, compose, dot, scale } from '../../assembly/placing/Transform.ts';
import type { Patch } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { SetupGlass } from '../subjects.ts';
import type { WholeMass } from './wholeMass.ts';

const SLIDES = ['slideMm', 'sideMm', 'heightMm'] as const;

/** A joint somewhere between what carries a camera and the camera, along which the camera can be moved. */
export interface LoadSlide {
  readonly joint: RigJoint;
  readonly key: (typeof SLIDES)[number];
  /** As the file states it, or as it stands where nothing is stated; and the range of it. */
  readonly valueMm: number;
  readonly lowMm: number;
  readonly highMm: number;
  /** Where the camera goes, in the frame of the build, as the setting grows: of length one. */
  readonly way: Vector;
  /** The pieces that go along. */
  readonly moved: ReadonlySet<string>;
}

/** Those whose setting is not found by the program; a joint beside which another holds the two together cannot be moved. */
export function loadSlides(ledger: Ledger, { setup, glass }: SetupGlass, carrier: string): readonly LoadSlide[] {
  return ledger.cell(`load slides|${setup}|${glass}|${carrier}`, () => {
    const { model } = placeSetup(ledger, setup, glass);
    const body = opticalPath(ledger, setup, glass).body?.ref;
    if (body === undefined) return [];
    return model.tree.flatMap((step) => {
      if (step.joint.implied || SLIDES.every((key) => rangeOf(step.joint, key) === undefined)) return [];
      const links = [...model.tree, ...model.loops].filter((one) => one !== step && !onlyPushes(one.joint.a.point, one.joint.b.point));
      const moved = hangingOn(body, links.map(({ joint: { a, b } }) => [a.ref, b.ref] as const));
      const onB = moved.has(step.joint.b.ref);
      if (moved.has(carrier) || moved.has(step.joint.a.ref) === onB) return [];
      return SLIDES.flatMap((key) => slideOf(ledger, { setup, glass }, { step, key, moved, onB }) ?? []);
    });
  });
}

/** All that hangs together with a piece by some links. */
export function hangingOn(from: string, links: readonly (readonly [string, string])[]): ReadonlySet<string> {
  const found = new Set([from]);
  const open = [from];
  for (let ref = open.pop(); ref !== undefined; ref = open.pop()) {
    for (const [a, b] of links) {
      const next = a === ref ? b : b === ref ? a : undefined;
      if (next === undefined || found.has(next)) continue;
      found.add(next);
      open.push(next);
    }
  }
  return found;
}

interface Candidate {
  readonly step: TreeStep;
  readonly key: LoadSlide['key'];
  readonly moved: ReadonlySet<string>;
  /** The camera hangs on end `b`. */
  readonly onB: boolean;
}

function slideOf(ledger: Ledger, { setup, glass }: SetupGlass, { step, key, moved, onB }: Candidate): LoadSlide | undefined {
  const { places, values } = placeSetup(ledger, setup, glass);
  const range = rangeOf(step.joint, key);
  const variable = step.variables.find((one) => one.key === key);
  if (range === undefined || (variable !== undefined && (variable.scope !== 'free' || values.has(variable)))) return undefined;
  const counted = step.turned.has(key) ? -1 : 1;
  const frame = compose(places.get(step.joint.a.ref) ?? IDENTITY, step.frameA);
  // Seen from `a`, the setting moves `b`; settings that are counted on `b` run the other way.
  const way = scale(axis(frame.r, axisOf(step.joint.a.point.kind, key)), counted * (onB ? 1 : -1));
  return { joint: step.joint, key, valueMm: step.fixed[key] === undefined ? (variable?.start ?? 0) : step.fixed[key] * counted, lowMm: range[0], highMm: range[1], way, moved };
}

/** How far a slide can still take the camera along a direction; 0 where it runs another way. */
export function roomAlong({ way, valueMm, lowMm, highMm }: LoadSlide, direction: Vector): number {
  const along = dot(way, direction);
  if (Math.abs(along) < ALIGNED) return 0;
  return Math.max(0, along > 0 ? highMm - valueMm : valueMm - lowMm);
}

/** Share of a mass that goes along: its centre moves by that much less than the camera. */
export function movedShare(whole: WholeMass | undefined, { moved }: LoadSlide): number {
  if (whole === undefined || whole.massG === 0) return 0;
  return [...whole.pieces, ...whole.cables].filter(({ piece }) => moved.has(piece.ref)).reduce((sum, { massG }) => sum + massG, 0) / whole.massG;
}

const ALIGNED = 0.95; // within 18°: a plate on a tilted head still counts as fore and aft

/** The setting that takes the camera so far along a direction, to half a millimetre and within its range. */
export function settingFor({ way, valueMm, lowMm, highMm }: LoadSlide, direction: Vector, byMm: number): number {
  const wanted = valueMm + Math.sign(dot(way, direction)) * byMm;
  return Math.min(highMm, Math.max(lowMm, Math.round(wanted * 2) / 2));
}

/** Sets a joint: for all glasses, or for one alone. */
export function settingPatches({ joint: { path, settings }, key, valueMm }: LoadSlide, value: number, glass?: string): Patch[] {
  const now = settings[key];
  const pinned = typeof now === 'object' && 'pinned' in now ? now : { pinned: {}, otherwise: valueMm };
  const next = glass === undefined ? value : { ...pinned, pinned: { ...pinned.pinned, [glass]: value } };
  return Object.keys(settings).length > 0 ? [{ op: 'add', path: `${path}/settings/${key}`, value: next }] : [{ op: 'add', path: `${path}/settings`, value: { [key]: next } }];
}
