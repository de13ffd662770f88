import { readFileSync } from 'node:fs';
import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { focusScale, type RingMark } from './focusScale.ts';
import { helicoid } from './helicoid.ts';
import { scale } from './scale.ts';

test('gives the angles of a reference implementation between seven marks, in any order', () => {
  // SciPy's PchipInterpolator over 1/distance: reference/focus/pchip.json.
  const { curves } = JSON.parse(readFileSync('reference/focus/pchip.json', 'utf8')) as {
    curves: { name: string; x: number[]; y: number[]; at: number[]; value: number[] }[];
  };
  const rings = curves.filter(({ name }) => name.startsWith('ring angle'));
  expect(rings.length).toBe(2);
  for (const { x, y, at, value } of rings) {
    const marks = x.map((closeness, k) => ({ distanceMm: 1 / closeness, angleDeg: y[k]! }));
    marks.sort((a, b) => Math.sin(a.angleDeg) - Math.sin(b.angleDeg));
    const ring = focusScale(marks);
    for (const [k, closeness] of at.entries()) expect(Math.abs(ring.curve.evaluate(closeness) - value[k]!)).toBeLessThan(1e-10);
    expect(scale({ marks, atDistanceMm: 1 / at[20]! }).angleDeg).toBeCloseTo(value[20]!, 9);
  }
});

// Thin lens on a helicoid: extension f²/(s − f), lead 12 mm.
const turn = (s: number) => helicoid({ focalLengthMm: 50, focusDistanceMm: s, leadMm: 12 }).angleDeg;

test('five marks of a helicoid give its angle everywhere to a twentieth of a degree', () => {
  const marks = [Infinity, 4000, 2000, 1200, 800].map((distanceMm) => ({ distanceMm, angleDeg: turn(distanceMm) }));
  for (let s = 800; s < 1e5; s *= 1.1) expect(Math.abs(scale({ marks, atDistanceMm: s }).angleDeg! - turn(s))).toBeLessThan(0.05);
});

const ringStep = fc.tuple(fc.integer({ min: 1, max: 300 }), fc.double({ min: 1, max: 60, noNaN: true }));
const ringMarks = fc
  .uniqueArray(ringStep, { minLength: 2, maxLength: 9, selector: ([closeness]) => closeness })
  .map((steps): RingMark[] => {
    let angleDeg = 0;
    return steps.toSorted(([a], [b]) => a - b).map(([closeness, turn]) => ({ distanceMm: 1e5 / closeness, angleDeg: (angleDeg += turn) }));
  });

property.prop([ringMarks, fc.double({ min: 0, max: 1, noNaN: true })])('there and back is where it was', (marks, part) => {
  const ring = focusScale(marks);
  const closeness = ring.curve.first + part * (ring.curve.last - ring.curve.first);
  const distanceMm = Math.min(Math.max(1 / closeness, ring.nearMm), ring.farMm);
  const angleDeg = ring.angleAt(distanceMm);
  expect(Math.abs(ring.angleAt(ring.distanceAt(angleDeg)) - angleDeg) / ring.throwDeg).toBeLessThan(1e-11);
  for (const mark of marks) expect(ring.angleAt(mark.distanceMm)).toBeCloseTo(mark.angleDeg, 9);
});

const five = [
  { distanceMm: 600, angleDeg: 290 }, { distanceMm: null, angleDeg: 0 }, { distanceMm: 2000, angleDeg: 90 },
  { distanceMm: 1000, angleDeg: 180 }, { distanceMm: 5000, angleDeg: 30 },
];

test.each([
  ['nearer than the nearest mark', { marks: five, atDistanceMm: 500 }, 'atDistanceMm', '600 mm to infinity'],
  ['past the throw', { marks: five, atAngleDeg: 291 }, 'atAngleDeg', '0° (infinity) to 290° (600 mm)'],
  ['infinity without its mark', { marks: five.filter((one) => one.distanceMm !== null), atDistanceMm: null }, 'atDistanceMm', '600 mm to 5000 mm'],
  ['marks that cross', { marks: five.with(2, { distanceMm: 2000, angleDeg: 20 }), atAngleDeg: 10 }, 'marks/2/angleDeg', 'one way'],
  ['two marks at one angle', { marks: five.with(2, { distanceMm: 2000, angleDeg: 30 }), atAngleDeg: 10 }, 'marks/2/angleDeg', 'one way'],
  ['two marks at one distance', { marks: [...five, { distanceMm: 600, angleDeg: 300 }], atAngleDeg: 10 }, 'marks/5/distanceMm', 'Two marks'],
  ['a throw of zero', { marks: five.map((one) => ({ ...one, angleDeg: 5 })), atAngleDeg: 5 }, 'marks', 'throw of zero'],
  ['one mark', { marks: five.slice(0, 1), atAngleDeg: 5 }, 'marks', 'at least 2'],
  ['a distance of nothing', { marks: [...five, { distanceMm: 0, angleDeg: 400 }], atAngleDeg: 5 }, 'marks/5/distanceMm', 'more than 0'],
  ['both questions', { marks: five, atDistanceMm: 1000, atAngleDeg: 5 }, '', 'exactly one'],
  ['no question', { marks: five }, '', 'exactly one'],
])('%s is refused where it stands', (_, input, path, words) => {
  expect(scale.answer(input)).toMatchObject({ ok: false, faults: [{ path, message: expect.stringContaining(words) }] });
});
