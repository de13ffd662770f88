import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { besideTips } from './besideTips.ts';

const tip = fc.record({ x: fc.double({ min: -200, max: 1500, noNaN: true }), y: fc.double({ min: -200, max: 900, noNaN: true }) });
const room = { width: 380, height: 368, left: 90, right: 290 };

// Common practice of labelled drawings: no label covers another, and every label is on the sheet.
property.prop([fc.array(tip, { maxLength: 12 })])('no label covers another, and all are in the room', (places) => {
  const labels = besideTips(places.map((place, at) => ({ ...place, key: String(at) })), room);
  expect(labels.map(({ key }) => key).toSorted()).toEqual(places.map((_, at) => String(at)).toSorted());
  for (const side of ['left', 'right']) {
    const heights = labels.filter((one) => one.side === side).map(({ y }) => y).toSorted((a, b) => a - b);
    for (const [at, y] of heights.entries()) if (at > 0) expect(y - (heights[at - 1] ?? 0)).toBeGreaterThanOrEqual(20 - 1e-9);
  }
  for (const { x, y } of labels) expect(x >= 84 && x <= 296 && y >= 10 - 1e-9 && y <= 358 + 1e-9).toBe(true);
});

test('six at one place go three to each side, beside the rig', () => {
  const labels = besideTips(Array.from({ length: 6 }, (_, at) => ({ key: String(at), x: 600, y: 300 })), { width: 824, height: 460, left: 300, right: 640 });
  expect(labels.map(({ side, x, y }) => [side, x, y])).toEqual([['left', 280, 300], ['left', 280, 320], ['left', 280, 340], ['right', 660, 300], ['right', 660, 320], ['right', 660, 340]]);
});
