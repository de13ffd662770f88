import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { gearRideOut } from './gearRideOut.ts';

const pair = { moduleMm: 0.8, driverTeeth: 40, drivenTeeth: 120, pressureAngleDeg: 20 };

property.prop([fc.integer({ min: 17, max: 80 }), fc.integer({ min: 17, max: 200 }), fc.double({ min: 0.3, max: 2, noNaN: true })])(
  'at the opening where it rides out one pair of teeth is in contact, and the tips still overlap there',
  (driverTeeth, drivenTeeth, moduleMm) => {
    const teeth = { ...pair, driverTeeth, drivenTeeth, moduleMm };
    const { ridesOutAtMm } = gearRideOut({ ...teeth, separationMm: 0 });
    expect(gearRideOut({ ...teeth, separationMm: ridesOutAtMm })).toMatchObject({ contactRatio: expect.closeTo(1, 9), use: expect.closeTo(1, 12) });
    // The tips pass each other two modules out (ISO 53: addendum one module each).
    expect(ridesOutAtMm).toBeGreaterThan(0.2 * moduleMm);
    expect(ridesOutAtMm).toBeLessThan(2 * moduleMm);
    expect(gearRideOut({ ...teeth, separationMm: 2 * moduleMm }).contactRatio).toBeCloseTo(0, 6);
  },
);

test.each([0.01, 0.02, 0.05])('opened by %d mm the play is 2·Δa·tanα to first order', (separationMm) => {
  const { backlashMm } = gearRideOut({ ...pair, separationMm });
  expect(backlashMm / (2 * separationMm * Math.tan(Math.PI / 9))).toBeCloseTo(1, 2);
});

test('beyond all reach nothing meshes', () => {
  const { contactRatio, use } = gearRideOut({ ...pair, separationMm: 5 });
  expect(contactRatio).toBe(0);
  expect(use).toBeGreaterThan(3);
});
