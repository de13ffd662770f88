import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { gearLeastTeeth } from './gearLeastTeeth.ts';

// Shigley, Mechanical Engineering Design (from memory): at 20°, 13 teeth run with at most 16, 14 with 26, 15 with 45, 16 with 101, 17 with 1309.
test.each([
  [13, 16],
  [14, 26],
  [15, 45],
  [16, 101],
  [17, 1309],
])('%i teeth run with %i and with no more', (leastTeeth, drivenTeeth) => {
  expect(gearLeastTeeth({ drivenTeeth, pressureAngleDeg: 20 }).leastTeeth).toBe(leastTeeth);
  expect(gearLeastTeeth({ drivenTeeth: drivenTeeth + 1, pressureAngleDeg: 20 }).leastTeeth).toBe(leastTeeth + 1);
});

property.prop([fc.integer({ min: 3, max: 5000 }), fc.double({ min: 10, max: 30, noNaN: true })])(
  'a larger gear never asks for fewer teeth, and a rack asks for most',
  (drivenTeeth, pressureAngleDeg) => {
    const here = gearLeastTeeth({ drivenTeeth, pressureAngleDeg }).leastTeeth;
    expect(gearLeastTeeth({ drivenTeeth: drivenTeeth + 1, pressureAngleDeg }).leastTeeth).toBeGreaterThanOrEqual(here);
    expect(gearLeastTeeth({ drivenTeeth: Infinity, pressureAngleDeg }).leastTeeth).toBeGreaterThanOrEqual(here);
  },
);

test('a pressure angle of nothing is refused', () => {
  expect(gearLeastTeeth.answer({ drivenTeeth: 100, pressureAngleDeg: 0 })).toMatchObject({ ok: false, faults: [{ path: 'pressureAngleDeg' }] });
});
