import type { JointHold } from '../../assembly/hold/jointHold.ts';
import { underWeight } from '../../assembly/hold/underWeight.ts';
import { SCREWED } from '../../assembly/mates.ts';
import type { Wrench } from '../../calc/mechanics/network/forces.ts';
import { threadStress } from '../../calc/mechanics/threadStress.ts';
import { hold } from '../../standards/assumptions/hold.ts';
import { mechanics } from '../../standards/assumptions/mechanics.ts';
import { CAMERA_SCREW } from '../../standards/threads.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { type AlongAxes, type PullAndNod, hardestAttitude } from './hardestAttitude.ts';
import { type JointScrew, jointScrew } from './jointScrew.ts';

/** What the worst attitude asks of the screws of a joint, jolts included, and what they bear. */
export interface ScrewLoad {
  readonly hold: JointHold;
  readonly screw: JointScrew;
  /** Force that presses the faces together, of all its screws. */
  readonly preloadN: number;
  readonly pullN: number;
  readonly nodNm: number;
  /** Pull and nod over what opens the faces at their rim: 1 opens them. */
  readonly opening: number;
  /** Force in one screw, and what its core or the thread of the socket bears. */
  readonly screwN: number;
  readonly bearsN: number;
  readonly weaker: 'core' | 'socket';
  readonly stressMPa: number;
  /** The larger of both uses were it tightened otherwise, or by more screws. */
  readonly useWith: (tightened: Tightened) => number;
}

export interface Tightened {
  readonly torqueNm: number;
  readonly screws: number;
}

/** Turning a screw twists it as well: together that strains it like so much more pull (von Mises). VDI 2230, from memory: 1.2 to 1.35. */
const TWIST = 1.3;
/** The thread of a socket shears on about this share of the cylinder of its diameter. FED-STD-H28, from memory: 0.85 at nominal size, less with tolerances. */
const THREAD_SHARE = 0.75;

/** What hangs on one joint that screws hold, with one glass; `undefined` where it is none, or the rig cannot be reckoned. */
export function screwLoad(asking: Asking, { setup, glass }: SetupGlass, path: string): ScrewLoad | undefined {
  const solved = underWeight(asking.ledger, setup, glass);
  const at = solved?.rig.springs.findIndex((spring) => spring !== 'ground' && spring.joint.path === path) ?? -1;
  const held = solved?.rig.springs[at];
  if (solved === undefined || held === undefined || held === 'ground' || !isScrewed(held)) return undefined;
  const purpose = asking.ledger.at(`builds/${asking.ledger.at(`setups/${setup}/camera`) as string}/purpose`);
  const jolts = asking.assume(purpose === 'vehicle' ? mechanics.vehicleFactor : mechanics.handlingFactor).value;
  const along = solved.springsAlongAxes().map((all) => all[at]?.onB ?? NOTHING) as unknown as AlongAxes;
  return worstWay(asking, held, along, jolts);
}

const NOTHING: Wrench = { forceN: [0, 0, 0], momentNm: [0, 0, 0] };
/** Whether screws hold it: threads on both sides, not a shape that stands in for them. */
export const isScrewed = ({ joint: { a, b }, type }: Pick<JointHold, 'joint' | 'type'>): boolean => type.name.includes('screw') && [a, b].every(({ point }) => SCREWED.has(point.kind));

function worstWay(asking: Asking, held: JointHold, along: AlongAxes, jolts: number): ScrewLoad {
  const screw = jointScrew(asking, held.joint);
  const nut = asking.assume(mechanics.nutFactor);
  const { diameterMm, pitchMm, series } = screw.thread;
  const preloadOf = ({ torqueNm, screws }: Tightened) => (screws * torqueNm) / (nut.value * diameterMm * 1e-3);
  // Faces on a ring open at the rim where the force leaves its core, (ro² + ri²)/4ro.
  const coreM = ((screw.outerMm ** 2 + screw.innerMm ** 2) / (4 * screw.outerMm)) * 1e-3;
  const opens = ({ pullN, nodNm }: PullAndNod) => pullN + nodNm / coreM;
  const asked = hardestAttitude(along, coreM);
  const worst = { pullN: jolts * asked.pullN, nodNm: jolts * asked.nodNm };
  // Until the faces open the screw carries its tightening, from then on what hangs on it (tilting about the rim).
  const pulledN = worst.pullN + worst.nodNm / (screw.outerMm * 1e-3);
  const screwOf = (tightened: Tightened) => Math.max(preloadOf(tightened), pulledN) / tightened.screws;
  const now = { torqueNm: screw.torque.value, screws: screw.screws };
  const [preloadN, screwN] = [preloadOf(now), screwOf(now)];
  const { areaMm2, stressMPa } = threadStress({ series, diameterMm, pitchMm, forceN: screwN });
  const coreN = (areaMm2 * asking.assume(hold.screwStressMPa).value) / TWIST;
  const socketN = THREAD_SHARE * Math.PI * diameterMm * engagedMm(screw) * asking.assume(hold.socketShearMPa).value;
  const bearsN = Math.min(coreN, socketN);
  return {
    hold: held, screw, preloadN, ...worst, opening: opens(worst) / preloadN, screwN, bearsN, weaker: coreN < socketN ? 'core' : 'socket', stressMPa,
    useWith: (tightened) => Math.max(opens(worst) / preloadOf(tightened), screwOf(tightened) / bearsN),
  };
}

/** Camera screws stand out by a fixed length; others go in by their diameter. Common practice. */
const engagedMm = ({ thread }: JointScrew): number => (thread.source.includes('ISO 1222') ? CAMERA_SCREW.proudMm : thread.diameterMm);
