import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { type Lot, lightestCases, packCases } from './casePacking.ts';

const lots = (...masses: number[]): Lot<number>[] => masses.map((eachG, of) => ({ of, eachG, count: 1 }));
const weights = (given: readonly Lot<number>[], mostG: number) => packCases(given, mostG).cases.map((one) => one.map(({ eachG }) => eachG));

test('three of 4 and three of 6 into tens: each four with a six, though the order tears them apart', () => {
  expect(weights(lots(4, 4, 4, 6, 6, 6), 10).map((one) => one.reduce((a, b) => a + b, 0))).toEqual([10, 10, 10]);
});

test('into twelves like stays with like', () => expect(weights(lots(4, 4, 4, 6, 6, 6), 12)).toEqual([[4, 4, 4], [6, 6], [6]]));

test('in no more cases than need be, the load is even: eight of 3 into two of up to 18, not six and two', () => {
  expect(packCases([{ of: 0, eachG: 3, count: 8 }], 18).cases.map((one) => one[0]?.count)).toEqual([4, 4]);
});

test('what fills more than half a case shares with none of its like', () => expect(packCases(lots(6, 6, 6, 6), 10)).toMatchObject({ atLeast: 4, cases: [[{}], [{}], [{}], [{}]] }));

test.each([60, 61])('the textbook case where a larger case takes one more, heaviest first: three of %i all the same (from memory)', (mostG) => {
  // 44 24 24 22 21 17 8 8 6 6 fill three of 60 to the brim; heaviest first into 61 opens a fourth.
  expect(packCases(lots(44, 24, 24, 22, 21, 17, 8, 8, 6, 6), mostG)).toMatchObject({ atLeast: 3, cases: { length: 3 } });
});

/** The fewest by trying every way. */
function fewest(masses: readonly number[], mostG: number, open: readonly number[] = []): number {
  const [first, ...rest] = masses;
  if (first === undefined) return open.length;
  const into = open.flatMap((load, at) => (load + first <= mostG ? fewest(rest, mostG, open.with(at, load + first)) : []));
  return Math.min(fewest(rest, mostG, [...open, first]), ...into);
}

property.prop([fc.array(fc.integer({ min: 1, max: 20 }), { maxLength: 7 }), fc.integer({ min: 20, max: 40 })])('beside every way of packing a few things: all are in, none is over, and few enough', (masses, mostG) => {
  const { cases, atLeast } = packCases(lots(...masses), mostG);
  const best = fewest(masses, mostG);
  expect(cases.flat().map(({ of }) => of).toSorted((a, b) => a - b)).toEqual(masses.map((_, at) => at));
  for (const one of cases) expect(one.reduce((sum, { eachG }) => sum + eachG, 0)).toBeLessThanOrEqual(mostG * 1.000_001);
  expect(atLeast).toBeLessThanOrEqual(best);
  expect(cases.length).toBeLessThanOrEqual((11 / 9) * best + 6 / 9);
});

/** The lightest that the heaviest of so many can be, by trying every way. */
function lightest(masses: readonly number[], loads: readonly number[]): number {
  const [first, ...rest] = masses;
  return first === undefined ? Math.max(...loads) : Math.min(...loads.map((load, at) => lightest(rest, loads.with(at, load + first))));
}

property.prop([fc.array(fc.integer({ min: 100, max: 9000 }), { minLength: 1, maxLength: 6 }), fc.integer({ min: 1, max: 4 })])('beside every way of sharing a few things among so many cases: all are in, and the heaviest is at most a third and a kilogram over the lightest', (masses, count) => {
  const cases = lightestCases(lots(...masses), 60_000, count);
  expect(cases.length).toBeLessThanOrEqual(count);
  expect(cases.flat().map(({ of }) => of).toSorted((a, b) => a - b)).toEqual(masses.map((_, at) => at));
  // Heaviest first to the emptiest is never more than 4/3 of the best (Graham 1969, from memory); MULTIFIT is nearer.
  const best = lightest(masses, Array.from({ length: count }, () => 0));
  expect(Math.max(...cases.map((one) => one.reduce((sum, { eachG }) => sum + eachG, 0)))).toBeLessThanOrEqual(best * (4 / 3) + 1000);
});
