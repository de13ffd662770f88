import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { closeUp } from './closeUp.ts';

const power = fc.double({ min: 0, max: 10, noNaN: true });
const mark = fc.oneof(fc.double({ min: 500, max: 1e5, noNaN: true }), fc.constant(Infinity));

property.prop([power, power, mark])('two close-up lenses one on the other are one of their sum', (first, second, focusDistanceMm) => {
  const inner = closeUp({ powerDpt: first, focusDistanceMm, diopterToSensorMm: 200 });
  const outer = closeUp({ powerDpt: second, focusDistanceMm: inner.tapeMm, diopterToSensorMm: 200 });
  const both = closeUp({ powerDpt: first + second, focusDistanceMm, diopterToSensorMm: 200 });
  if (both.tapeMm === Infinity) expect(outer.tapeMm).toBe(Infinity);
  else expect(outer.tapeMm / both.tapeMm).toBeCloseTo(1, 9);
});

test('the mark is counted from the sensor, the dioptres from the close-up lens', () => {
  // Derived: 1.2 m on the tape is 1 m from the close-up lens, 1 dpt; with +1 it is 2 dpt, 0.5 m.
  expect(closeUp({ powerDpt: 1, focusDistanceMm: 1200, diopterToSensorMm: 200 })).toEqual({ workingDistanceMm: 500, tapeMm: 700 });
});

test('feet in the place of millimetres end inside the camera, which the message says', () => {
  const answer = closeUp.answer({ powerDpt: 1, focusDistanceMm: 5, diopterToSensorMm: 200 });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'focusDistanceMm', message: expect.stringContaining('200 mm') }] });
});
