import { screwsOf } from '../../assembly/hold/jointHold.ts';
import type { RigJoint } from '../../assembly/placing/rigJoints.ts';
import { hold } from '../../standards/assumptions/hold.ts';
import { mechanics } from '../../standards/assumptions/mechanics.ts';
import { type Thread, thread } from '../../standards/threads.ts';
import { printNumber } from '../../units/print.ts';
import { named } from '../named.ts';
import type { Asking } from '../Asking.ts';
import type { Bounded } from './Bounded.ts';

/** The screw of a joint: its thread, how firmly it is turned, and the ring on which the faces touch. */
export interface JointScrew {
  readonly thread: Thread;
  readonly torque: Bounded;
  /** The most it is usually turned with. */
  readonly mostNm: number;
  readonly byKnob: boolean;
  readonly screws: number;
  readonly innerMm: number;
  readonly outerMm: number;
  /** "2 N·m on a 1/4-20 by its knob (assumed)". */
  readonly says: string;
}

/** A thread that is not named counts as the small camera screw. */
const SMALL = thread('1/4-20') as Thread;

export function jointScrew(asking: Asking, { a, b, torqueNm }: Pick<RigJoint, 'a' | 'b' | 'torqueNm'>): JointScrew {
  const male = a.point.sex === 'male' ? a : b;
  const size = [a, b].flatMap(({ point }) => (point.class === undefined ? [] : (thread(point.class) ?? [])))[0] ?? SMALL;
  const byKnob = male.point.tool === 'hand';
  const usual = usualTorque(asking, size, byKnob);
  const torque = torqueNm === undefined ? usual : { value: torqueNm, low: torqueNm * 0.8, high: torqueNm * 1.2 };
  const contact = a.point.contactMm ?? b.point.contactMm;
  const outerMm = contact?.[1] ?? asking.assume(mechanics.contactOuterMm).value;
  const innerMm = Math.min(contact?.[0] ?? asking.assume(mechanics.contactInnerMm).value, 0.95 * outerMm);
  const screws = screwsOf({ a, b });
  const says = `${printNumber(torque.value)} N·m on ${screws > 1 ? `each of ${screws} screws${believed([a, b])}` : 'a'} ${size.name} ${byKnob ? 'by its knob ' : ''}(${torqueNm === undefined ? 'assumed' : 'entered'})`;
  return { thread: size, torque, mostNm: byKnob ? asking.assume(mechanics.clampScrewNm).high : usual.high, byKnob, screws, innerMm, outerMm, says };
}

/** Whose word alone it is that there are several. */
function believed(ends: readonly RigJoint['a'][]): string {
  const [one, other] = ends.filter(({ point }) => point.screws !== undefined);
  return one === undefined || other !== undefined ? '' : `, as only ${named(one.piece.name)} says,`;
}

/** What a screw of this size is tightened with, by key or by its knob. */
function usualTorque(asking: Asking, { diameterMm }: Thread, byKnob: boolean): Bounded {
  const usual = asking.assume(diameterMm > 8 ? mechanics.largeScrewNm : mechanics.smallScrewNm);
  const share = byKnob ? asking.assume(hold.knobShare).value : 1;
  return { value: usual.value * share, low: usual.low * share, high: usual.high * share };
}
