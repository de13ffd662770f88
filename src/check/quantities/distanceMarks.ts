import type { PartView } from '../../shoot/ledger/PartView.ts';
import type { StatedFigure } from '../../shoot/schema/basics.ts';

/** A value measured at a distance; `Infinity` for the infinity mark. */
export interface DistanceMark {
  readonly distanceMm: number;
  readonly value: number;
}

/** The marks of a part that hold a figure over distance, such as its squeeze; empty where none are entered. A copy's own list comes first. */
export function distanceMarks(part: PartView, path: string, key: string): DistanceMark[] {
  const list = (part.read(path) ?? []) as readonly Readonly<Record<string, unknown>>[];
  const ofPart = part.ledger.at(`${part.path}/${path}`) === list;
  return list.map((mark, at) => {
    const stated = mark[key] as StatedFigure;
    const plain = typeof stated === 'number' ? stated : stated.value;
    return {
      distanceMm: mark['distanceMm'] === 'infinity' ? Infinity : (mark['distanceMm'] as number),
      value: ofPart ? (part.figure(`${path}/${at}/${key}`)?.value ?? plain) : plain,
    };
  });
}
