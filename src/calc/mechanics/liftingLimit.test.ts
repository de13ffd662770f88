import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { liftingLimit } from './liftingLimit.ts';

const OFTEN = { coupling: 'good', liftsPerMin: 0.2, durationH: 1 } as const;
const best = { massG: 10_000, horizontalMm: 250, verticalMm: 750, travelMm: 250, asymmetryDeg: 0, ...OFTEN } as const;

test('the printed case 51 lb · 0.50 · 0.82 · 0.93 · 0.95 is cut to 18.4 lb (NIOSH 94-110)', () => {
  // Reach 0.50 is 50 cm; 0.93 height 23 1/3 cm below or above 75; travel long; grip fair, below 75 cm.
  const { limitG, horizontalMultiplier, couplingMultiplier } = liftingLimit({
    ...best, horizontalMm: 500, verticalMm: 750 - 700 / 3, coupling: 'fair', travelMm: 1750,
  });
  expect(horizontalMultiplier).toBe(0.5);
  expect(couplingMultiplier).toBe(0.95);
  const byTheBook = 51 * 0.5 * 0.82 * 0.93 * 0.95;
  expect(Math.floor(byTheBook * 10) / 10).toBe(18.4);
  // 23 kg are 50.7 lb, and the travel term is 0.82 + 4.5/175 here.
  expect(limitG / 453.592_37 / byTheBook).toBeCloseTo((50.706 / 51) * ((0.82 + 4.5 / 175) / 0.82), 4);
});

test.each([
  ['horizontalMm', 631], ['verticalMm', 1751], ['travelMm', 1751], ['asymmetryDeg', 136], ['liftsPerMin', 15.1],
] as const)('%s of %d is beyond the equation: not to be lifted so', (key, value) => {
  expect(liftingLimit({ ...best, [key]: value })).toMatchObject({ limitG: 0, index: Infinity });
});

test.each([
  [0.5, 1, 750, 0.97], [9, 1, 750, 0.52], [13, 1, 750, 0.34], [13, 1, 700, 0], [12, 2, 750, 0.21],
  [11, 2, 700, 0], [9, 8, 750, 0.15], [9, 8, 700, 0], [1.5, 1, 750, 0.925],
])('%d lifts a minute for %d h, hands at %i mm: %d (NIOSH 94-110, table 5)', (liftsPerMin, durationH, verticalMm, expected) => {
  expect(liftingLimit({ ...best, liftsPerMin, durationH, verticalMm }).frequencyMultiplier).toBeCloseTo(expected, 12);
});

const reach = fc.double({ min: 1, max: 700, noNaN: true });
const rate = fc.double({ min: 0, max: 14, noNaN: true });

property.prop([reach, rate])('further out, or oftener, is never lighter work', (horizontalMm, liftsPerMin) => {
  const here = liftingLimit({ ...best, horizontalMm, liftsPerMin }).limitG;
  expect(liftingLimit({ ...best, horizontalMm: horizontalMm + 10, liftsPerMin }).limitG).toBeLessThanOrEqual(here);
  expect(liftingLimit({ ...best, horizontalMm, liftsPerMin: liftsPerMin + 0.5 }).limitG).toBeLessThanOrEqual(here);
});
