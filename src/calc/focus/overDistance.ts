import { printNumber } from '../../units/print.ts';
import { NoAnswer } from '../calculator.ts';
import { heldWithin, type Pchip, pchip } from './pchip.ts';

/** A measured value at a few focus distances, joined by a smooth curve over 1/distance: what moves glass follows dioptres, not metres. */
export interface OverDistance {
  readonly nearMm: number;
  readonly farMm: number;
  /** The curve itself, over 1/distance in 1/mm, for loops. */
  readonly curve: Pchip;
  /** The value at a distance; `Infinity` where there is a mark at infinity. Throws `NoAnswer` outside the marks. */
  readonly at: (distanceMm: number, path: string) => number;
}

export interface Mark {
  readonly distanceMm: number;
  readonly value: number;
}

/** Joins marks given in any order. Throws `NoAnswer` for fewer than two, or two at one distance. */
export function overDistance(marks: readonly Mark[], path = 'marks'): OverDistance {
  if (marks.length < 2) throw new NoAnswer(path, `Found ${marks.length} mark${marks.length === 1 ? '' : 's'}; a scale needs two or more.`);
  const order = farthestFirst(marks);
  refuseTwins(marks, order, path);
  const x = order.map((k) => 1 / marks[k]!.distanceMm);
  const curve = pchip({ x, y: order.map((k) => marks[k]!.value) });
  const farMm = marks[order[0]!]!.distanceMm;
  const nearMm = marks[order.at(-1)!]!.distanceMm;
  return {
    nearMm,
    farMm,
    curve,
    at(distanceMm, atPath) {
      const closeness = heldWithin(1 / distanceMm, curve.first, curve.last);
      // An infinite distance is no rounding of the farthest mark.
      if (closeness !== undefined && (distanceMm < Infinity || farMm === Infinity)) return curve.evaluate(closeness);
      throw new NoAnswer(atPath, `Found ${inMm(distanceMm)}; the marks run from ${inMm(nearMm)} to ${inMm(farMm)}.`);
    },
  };
}

/** Places in the list, from the farthest mark to the nearest. */
export function farthestFirst(marks: readonly { readonly distanceMm: number }[]): number[] {
  return marks.map((_, k) => k).sort((a, b) => 1 / marks[a]!.distanceMm - 1 / marks[b]!.distanceMm);
}

/** A distance for a message. */
export function inMm(distanceMm: number): string {
  return distanceMm === Infinity ? 'infinity' : `${printNumber(distanceMm, 6)} mm`;
}

function refuseTwins(marks: readonly Mark[], order: readonly number[], path: string): void {
  order.forEach((place, k) => {
    const { distanceMm } = marks[place]!;
    if (!(distanceMm > 0) || 1 / distanceMm === Infinity) {
      throw new NoAnswer(`${path}/${place}/distanceMm`, `Found ${inMm(distanceMm)}; a mark needs a distance above zero.`);
    }
    if (k === 0 || 1 / marks[order[k - 1]!]!.distanceMm !== 1 / distanceMm) return;
    throw new NoAnswer(`${path}/${place}/distanceMm`, `Two marks stand at ${inMm(distanceMm)}; keep one of them.`);
  });
}
