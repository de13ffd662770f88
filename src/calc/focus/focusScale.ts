import { printNumber } from '../../units/print.ts';
import { NoAnswer } from '../calculator.ts';
import { farthestFirst, inMm, type OverDistance, overDistance } from './overDistance.ts';
import { heldWithin } from './pchip.ts';

/** How far a focus ring stands at each distance, and back: one curve serves both ways. Prepared once, for loops. */
export interface FocusScale extends OverDistance {
  readonly throwDeg: number;
  /** The angle at a distance. Throws `NoAnswer` outside the marks. */
  readonly angleAt: (distanceMm: number, path?: string) => number;
  /** The distance at an angle; `Infinity` at the infinity mark. Throws `NoAnswer` outside the marks. */
  readonly distanceAt: (angleDeg: number, path?: string) => number;
}

export interface RingMark {
  readonly distanceMm: number;
  readonly angleDeg: number;
}

/** Makes a scale of marks in any order. Throws `NoAnswer` where they do not run one way from far to near. */
export function focusScale(marks: readonly RingMark[], path = 'marks'): FocusScale {
  const over = overDistance(marks.map(({ distanceMm, angleDeg }) => ({ distanceMm, value: angleDeg })), path);
  const order = farthestFirst(marks);
  refuseTurningBack(marks, order, path);
  const far = marks[order[0]!]!;
  const near = marks[order.at(-1)!]!;
  return {
    ...over,
    throwDeg: Math.abs(near.angleDeg - far.angleDeg),
    angleAt: (distanceMm, atPath = 'atDistanceMm') => over.at(distanceMm, atPath),
    distanceAt(angleDeg, atPath = 'atAngleDeg') {
      const [low, high] = [Math.min(far.angleDeg, near.angleDeg), Math.max(far.angleDeg, near.angleDeg)];
      if (heldWithin(angleDeg, low, high) !== undefined) return 1 / over.curve.inverse(angleDeg);
      const reach = `${printNumber(far.angleDeg, 6)}° (${inMm(far.distanceMm)}) to ${printNumber(near.angleDeg, 6)}° (${inMm(near.distanceMm)})`;
      throw new NoAnswer(atPath, `Found ${printNumber(angleDeg, 6)}°; the marks run from ${reach}.`);
    },
  };
}

function refuseTurningBack(marks: readonly RingMark[], order: readonly number[], path: string): void {
  const turnBetween = (from: number, to: number) => marks[to]!.angleDeg - marks[from]!.angleDeg;
  const whole = turnBetween(order[0]!, order.at(-1)!);
  if (whole === 0) throw new NoAnswer(path, 'The farthest and the nearest mark stand at the same angle: a throw of zero.');
  for (const [k, place] of order.entries()) {
    const before = order[k - 1];
    if (before === undefined || turnBetween(before, place) * whole > 0) continue;
    const [from, to] = [marks[before]!, marks[place]!];
    const turn = `from ${inMm(from.distanceMm)} at ${printNumber(from.angleDeg, 6)}° to ${inMm(to.distanceMm)} at ${printNumber(to.angleDeg, 6)}°`;
    throw new NoAnswer(`${path}/${place}/angleDeg`, `The ring must turn one way from far to near; ${turn} it does not.`);
  }
}
