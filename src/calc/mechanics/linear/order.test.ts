import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { eliminationOrder } from './order.ts';

/** Entries kept below the diagonal when each row reaches back to its first neighbour. */
function envelopeOf(neighbours: readonly (readonly number[])[]): number {
  const place = new Int32Array(neighbours.length);
  eliminationOrder(neighbours).forEach((node, k) => (place[node] = k));
  return neighbours.reduce((sum, set, node) => sum + Math.max(0, ...set.map((one) => place[node]! - place[one]!)), 0);
}

const mutual = (size: number, edges: readonly (readonly [number, number])[]) => {
  const sets = Array.from({ length: size }, () => new Set<number>());
  for (const [a, b] of edges) if (a !== b) [a, b].forEach((node, k) => sets[node]!.add(k === 0 ? b : a));
  return sets.map((set) => [...set]);
};

test('a chain in any numbering needs one entry a row, and a star one row', () => {
  const size = 40;
  const shuffled = Array.from({ length: size }, (_, k) => (k * 17) % size);
  expect(envelopeOf(mutual(size, shuffled.slice(1).map((node, k) => [shuffled[k]!, node])))).toBe(size - 1);
  expect(envelopeOf(mutual(size, Array.from({ length: size - 1 }, (_, k) => [3, k < 3 ? k : k + 1])))).toBeLessThanOrEqual(size);
});

const graphs = fc.integer({ min: 1, max: 30 }).chain((size) => {
  const node = fc.nat({ max: size - 1 });
  return fc.array(fc.tuple(node, node)).map((edges) => mutual(size, edges));
});

property.prop([graphs])(
  'names every node once, whatever hangs together',
  (neighbours) => {
    const order = eliminationOrder(neighbours);
    expect([...order].sort((a, b) => a - b)).toEqual([...neighbours.keys()]);
  },
);

test('of nothing, nothing', () => expect(eliminationOrder([])).toEqual([]));
