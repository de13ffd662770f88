import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { CARRIAGE_EDITION, CARRIAGE_LIMITS, CARRIAGE_OPEN } from '../../standards/carriageLimits.ts';
import { pack } from './pack.ts';

test('exactly on the line is below it (IATA DGR 67th edition): 100.00, 100.01, 160.00, 160.01 Wh', () => {
  const flight = (wattHours: number) => pack({ nominalV: 1, capacityAh: wattHours }).flight;
  expect([100, 100.01, 160, 160.01].map(flight)).toEqual(['to 100 Wh', '100 to 160 Wh', '100 to 160 Wh', 'over 160 Wh']);
});

property.prop([fc.integer({ min: 1, max: 400 }), fc.constantFrom(100,
  160)])('a marking whose product is on the line is not pushed over it by binary fractions', (tenths, limit) => {
  const nominalV = tenths / 10;
  expect(pack({ nominalV, capacityAh: limit / nominalV }).flight).toBe(limit === 100 ? 'to 100 Wh' : '100 to 160 Wh');
});

test('spares, approval and what is open are stated with their edition', () => {
  expect(CARRIAGE_LIMITS.map(({ spares, approval }) => [spares, approval])).toEqual([[20, false], [2, true], [0, false]]);
  expect(CARRIAGE_EDITION).toContain('67th edition, 2026');
  expect(CARRIAGE_OPEN.powerBanks.mostEach).toBe(2);
});
