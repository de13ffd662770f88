import { describe, expect, test } from 'vitest';
import { circleIn } from './circleIn.ts';

describe('circleIn', () => {
  test('finds a circle behind a branch, and only where there is one', () => {
    expect(circleIn({ a: ['b', 'c'], b: [], c: ['d'], d: ['e'], e: ['c'] })).toEqual(['c', 'd', 'e', 'c']);
    expect(circleIn({ a: ['b', 'c'], b: ['d'], c: ['d'], d: [] })).toBeUndefined();
    expect(circleIn({ a: ['a'] })).toEqual(['a', 'a']);
  });

  test('a name that only JavaScript knows leads nowhere', () => expect(circleIn({ a: ['constructor', 'toString'] })).toBeUndefined());

  test('a chain of a hundred thousand is walked to its end', () => {
    const chain = Object.fromEntries(Array.from({ length: 100_000 }, (_, at) => [`s${at}`, [`s${at + 1}`]]));
    expect(circleIn(chain)).toBeUndefined();
    expect(circleIn({ ...chain, s100000: ['s0'] })).toHaveLength(100_002);
  });
});
