import { type JointHold, screwsOf } from '../../assembly/hold/jointHold.ts';
import { rodClamp } from '../../calc/mechanics/rodClamp.ts';
import { screwJoint } from '../../calc/mechanics/screwJoint.ts';
import type { JointEnd } from '../../assembly/placing/rigJoints.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import { hold } from '../../standards/assumptions/hold.ts';
import { mechanics } from '../../standards/assumptions/mechanics.ts';
import { printNumber } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import { origin } from '../origin.ts';
import type { Bounded } from './Bounded.ts';
import { jointScrew } from './jointScrew.ts';

/** The moment at which friction of a joint lets go, N·m. */
export interface JointSlip extends Bounded {
  readonly says: string;
  /** The torque its screw has, and the moment it would hold with another. `undefined` where it was entered whole. */
  readonly screw: { readonly torqueNm: number; readonly slipAt: (torqueNm: number) => number; readonly byKnob: boolean; readonly mostNm: number; readonly diameterMm: number } | undefined;
}

/** `undefined` where shape keeps the joint from turning. */
export function jointSlip(asking: Asking, { joint, type }: Pick<JointHold, 'joint' | 'type'>): JointSlip | undefined {
  const { a, b } = joint;
  if (type.heldBy[type.name === 'friction arm' ? 'xNmPerRad' : 'zNmPerRad'] !== 'friction') return undefined;
  const entered = [a, b].flatMap((end) => end.piece.part.figure(`points/${end.pointId}/slipTorqueNm`) ?? []).concat(blockSeat([a, b]));
  const weakest = entered.reduce<Figure | undefined>((least, one) => (least === undefined || one.value < least.value ? one : least), undefined);
  if (weakest !== undefined) return { value: weakest.value, low: weakest.low, high: weakest.high, says: `slips at ${printNumber(weakest.value)} ${origin(weakest)}`, screw: undefined };
  if (type.name === 'one screw') return bySize(asking, joint);
  if (type.name === 'clamp on one rod') return byClamp(asking, joint, { diameter: asking.assume(hold.clampScrewMm), torque: asking.assume(mechanics.clampScrewNm), roundMm: roundOf([a, b], 15) });
  if (type.name === 'collar') return byClamp(asking, joint, { diameter: asking.assume(hold.collarScrewMm), torque: asking.assume(hold.collarScrewNm), roundMm: roundOf([a, b], 80) });
  const usual = asking.assume(type.name === 'friction arm' ? hold.armSlipNm : hold.shoeSlipNm);
  return { value: usual.value, low: usual.low, high: usual.high, says: `slips at ${printNumber(usual.value)} ${origin(usual)}`, screw: undefined };
}

const blockSeat = (ends: readonly JointEnd[]): Figure[] =>
  ends.some(({ point }) => point.kind === 'front') ? ends.flatMap(({ piece, point }) => (point.out !== undefined && point.out[2] < 0 ? (piece.part.figure('block/roll/slipTorqueNm') ?? []) : [])) : [];

/** The diameter written in the class of a point: "15 mm", "88 mm barrel". */
function roundOf(ends: readonly JointEnd[], otherwise: number): number {
  const written = ends.flatMap(({ point }) => /(\d+(?:\.\d+)?)\s*mm/.exec(point.class ?? '')?.[1] ?? []).map(Number)[0];
  return written ?? otherwise;
}

function bySize(asking: Asking, joint: JointHold['joint']): JointSlip {
  const { torque, thread: { diameterMm }, byKnob, innerMm, outerMm, mostNm, says } = jointScrew(asking, joint);
  const [nut, friction] = [asking.assume(mechanics.nutFactor), asking.assume(mechanics.faceFriction)];
  const slip = (torqueNm: number, nutFactor: number, mu: number) => screwJoint({ torqueNm, diameterMm, nutFactor, friction: mu, innerRadiusMm: innerMm, outerRadiusMm: outerMm }).slipNm;
  return {
    value: slip(torque.value, nut.value, friction.value), low: slip(torque.low, nut.high, friction.low), high: slip(torque.high, nut.low, friction.high),
    says: `${says}, friction ${printNumber(friction.value)} on a ring of ${printNumber(innerMm)} to ${printNumber(outerMm)} mm`,
    screw: { torqueNm: torque.value, slipAt: (torqueNm) => slip(torqueNm, nut.value, friction.value), byKnob, mostNm, diameterMm },
  };
}

function byClamp(asking: Asking, { torqueNm, a, b }: JointHold['joint'], { diameter, torque, roundMm }: { diameter: Figure; torque: Figure; roundMm: number }): JointSlip {
  const [nut, friction] = [asking.assume(mechanics.nutFactor), asking.assume(mechanics.rodFriction)];
  const screws = screwsOf({ a, b });
  const own: Bounded = torqueNm === undefined ? torque : { value: torqueNm, low: torqueNm * 0.8, high: torqueNm * 1.2 };
  const slip = (tightened: number, nutFactor: number, mu: number, thickMm: number) =>
    rodClamp({ torqueNm: tightened, screwDiameterMm: thickMm, nutFactor, screws, leverRatio: 1, friction: mu, rodDiameterMm: roundMm, contact: 'two lines' }).slipNm;
  return {
    value: slip(own.value, nut.value, friction.value, diameter.value), low: slip(own.low, nut.high, friction.low, diameter.high), high: slip(own.high, nut.low, friction.high, diameter.low),
    says: `${printNumber(own.value)} N·m on the screw of the clamp (${torqueNm === undefined ? 'assumed' : 'entered'}), friction ${printNumber(friction.value)} on ${printNumber(roundMm)} mm`,
    screw: { torqueNm: own.value, slipAt: (tightened) => slip(tightened, nut.value, friction.value, diameter.value), byKnob: a.point.tool === 'hand' || b.point.tool === 'hand', mostNm: asking.assume(mechanics.clampScrewNm).high, diameterMm: diameter.value },
  };
}
