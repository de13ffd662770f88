import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { tracksOf } from './tracksOf.ts';

test('a short line runs inside a long one; what does not meet shares a track', () => {
  const tracks = tracksOf([{ key: 'long', from: 0, to: 100 }, { key: 'short', from: 40, to: 10 }, { key: 'later', from: 60, to: 90 }]);
  expect([...tracks].toSorted()).toEqual([['later', 0], ['long', 1], ['short', 0]]);
});

property.prop([fc.array(fc.record({ from: fc.integer({ min: 0, max: 300 }), to: fc.integer({ min: 0, max: 300 }) }), { maxLength: 20 })])('no two in one track touch, and none is lost', (runs) => {
  const named = runs.map((run, at) => ({ key: String(at), ...run }));
  const tracks = tracksOf(named);
  expect(tracks.size).toBe(runs.length);
  for (const a of named) {
    for (const b of named) {
      if (a.key === b.key || tracks.get(a.key) !== tracks.get(b.key)) continue;
      expect(Math.max(a.from, a.to) < Math.min(b.from, b.to) || Math.max(b.from, b.to) < Math.min(a.from, a.to)).toBe(true);
    }
  }
});
