import type { Asking } from '../Asking.ts';
import type { ShotSubject } from '../subjects.ts';
import { type Focusing, blurAt, focusing } from './depthAt.ts';
import { shotRing, type ShotRing } from './ringAngle.ts';

/** How far a focus ring may stand beside its mark before a subject there is soft. */
export interface SharpTurn {
  /** To the side where less is left, degrees; `Infinity` where the ring's own ends come first. */
  readonly oneWayDeg: number;
  readonly angleDeg: number;
  readonly circleMm: number;
}

/** At a distance of a shot, from the sensor plane. */
export function sharpTurn(asking: Asking, subject: ShotSubject, distanceMm: number): SharpTurn {
  return asking.ledger.cell(`sharp turn|${subject.shot}|${distanceMm}`, () => turnAt(focusing(asking, subject), shotRing(asking, subject), distanceMm));
}

function turnAt(how: Focusing, ring: ShotRing, distanceMm: number): SharpTurn {
  const angleDeg = ring.angleAt(distanceMm);
  const oneWayDeg = Math.min(...endsOf(ring).map((end) => turnUntilSoft(how, ring, { distanceMm, angleDeg, end })));
  return { oneWayDeg, angleDeg, circleMm: how.circleOfConfusionMm };
}

const HALVINGS = 40;

/** Halves the way to an end of the ring until the blur is just the circle of confusion. */
function turnUntilSoft(how: Focusing, ring: ShotRing, { distanceMm, angleDeg, end }: { distanceMm: number; angleDeg: number; end: number }): number {
  const soft = (angle: number): boolean => blurAt(how, { focusMm: ring.distanceAt(angle), subjectMm: distanceMm }) > how.circleOfConfusionMm;
  if (!soft(end)) return Infinity;
  let [sharp, blurred] = [angleDeg, end];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (sharp + blurred) / 2;
    if (soft(middle)) blurred = middle;
    else sharp = middle;
  }
  return Math.abs(sharp - angleDeg);
}

function endsOf({ scale }: ShotRing): [number, number] {
  return [scale.angleAt(scale.farMm), scale.angleAt(scale.nearMm)];
}

/** The distances a shot's subject is at, where the ring has least to spare; the nearest first. */
export function tightestOf(asking: Asking, subject: ShotSubject, distancesMm: readonly number[]): { distanceMm: number; turn: SharpTurn } | undefined {
  const finite = [...new Set(distancesMm)].map((distanceMm) => ({ distanceMm, turn: sharpTurn(asking, subject, distanceMm) }));
  return finite.toSorted((a, b) => a.turn.oneWayDeg - b.turn.oneWayDeg)[0];
}

/** The turn that would stay sharp at another stop. */
export function sharpTurnAtStop(asking: Asking, subject: ShotSubject, { distanceMm, fNumber }: { distanceMm: number; fNumber: number }): number {
  return turnAt({ ...focusing(asking, subject), fNumber }, shotRing(asking, subject), distanceMm).oneWayDeg;
}
