import { unitOfKey } from '../units/unitOfKey.ts';
import { BENCH_MEASUREMENTS } from '../standards/benchMeasurements.ts';
import type { Answer } from './answer.ts';
import type { Checker } from './Checker.ts';
import { measureOf } from './describeFigure.ts';
import { restsOn } from './restsOn.ts';

/** A bench measurement, and how many answers would be surer for it. */
export interface WorthMeasuring {
  readonly says: string;
  readonly how: string;
  readonly answers: number;
}

/** What to measure first: the bench measurements behind most of the estimates that answers rest on, or wait for. */
export function measureFirst(checker: Checker, answers: readonly Answer[]): WorthMeasuring[] {
  const wanted = new Map<string, Set<string>>();
  const want = (path: string, answer: string): void => {
    const measure = measureOf(path);
    if (measure === undefined) return;
    const by = wanted.get(measure) ?? new Set();
    wanted.set(measure, by.add(answer));
  };
  for (const { key, missing = [] } of answers) {
    for (const { path } of missing) want(path, key);
    for (const { path, basis } of restsOn(checker.ledger, key)) if (basis !== 'measured' && unitOfKey(path) !== 'px') want(path, key);
  }
  return [...wanted]
    .flatMap(([measure, by]) => {
      const known = BENCH_MEASUREMENTS[measure];
      return known === undefined ? [] : [{ says: known.says, how: known.how, answers: by.size }];
    })
    .toSorted((a, b) => b.answers - a.answers);
}
