import { expect, test } from 'vitest';
import { inOrder, noneDoes, shortfall } from './cures.ts';

const cure = (says: string, use?: number) => ({ says, ...(use === undefined ? {} : { use }) });
const order = (...uses: readonly (number | undefined)[]) => inOrder(uses.map((use, at) => cure(`${at}`, use))).map(({ says }) => says).join('');

test('what cures comes before what only helps, else in the order given', () => {
  expect(order(0.8, 0.4, undefined)).toBe('012');
  expect(order(1.4, 0.9, 1.2, 0.3, undefined, 1)).toBe('134520');
});

test('a cure that leaves it failing says so, and several of them together', () => {
  expect([cure('', 1.01), cure('', 1), cure('')].map(shortfall)).toEqual(['helps, not enough alone', undefined, undefined]);
  expect(noneDoes({ mends: [cure('a', 1.4), cure('b', 1.2)] })).toBe('None of these is enough alone.');
  for (const mends of [[], [cure('a', 1.4)], [cure('a', 1.4), cure('b', 0.9)], [cure('a', 1.4), cure('b')]]) expect(noneDoes({ mends })).toBeUndefined();
});
