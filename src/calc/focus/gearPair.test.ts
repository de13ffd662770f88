import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { gearPair } from './gearPair.ts';

test('a printed pair of forces: 1576 lbf·in on a pitch radius of 2 in, 788 and 287 lbf', () => {
  // Shigley, Mechanical Engineering Design, 20° spur gears.
  const [lbf, inch] = [4.448222, 0.0254];
  const pair = gearPair({ moduleMm: 2.54, driverTeeth: 20, drivenTeeth: 40, pressureAngleDeg: 20, torqueNm: 1576 * lbf * inch });
  expect(pair.drivenPitchDiameterMm).toBeCloseTo(4 * 25.4, 9);
  expect(pair.tangentialForceN / lbf).toBeCloseTo(788, 1);
  expect(Math.round(pair.separatingForceN / lbf)).toBe(287);
});

const teeth = fc.integer({ min: 18, max: 200 });
const module = fc.double({ min: 0.3, max: 3, noNaN: true });

property.prop([module, teeth, teeth])('gives both gears one tooth force and one line of centres', (moduleMm, driverTeeth, drivenTeeth) => {
  const pair = gearPair({ moduleMm, driverTeeth, drivenTeeth, pressureAngleDeg: 20, torqueNm: 0.5 });
  const driverTorqueNm = (pair.tangentialForceN * pair.driverPitchDiameterMm) / 2000;
  expect(driverTorqueNm * pair.ratio).toBeCloseTo(0.5, 9);
  const swapped = gearPair({ moduleMm, driverTeeth: drivenTeeth, drivenTeeth: driverTeeth, pressureAngleDeg: 20, torqueNm: 0.5 });
  expect(swapped.contactRatio).toBeCloseTo(pair.contactRatio, 9);
  expect(swapped.centreDistanceMm).toBeCloseTo(pair.centreDistanceMm, 9);
  // 20° full-depth gears never reach 1.98, the value of two racks: 4·addendum/(π·m·sin 2α) (from memory, textbooks of gearing).
  expect(pair.contactRatio).toBeGreaterThan(1.5);
  expect(pair.contactRatio).toBeLessThan(4 / (Math.PI * Math.sin((40 * Math.PI) / 180)));
});

property.prop([module])('the module does not change how many teeth touch', (moduleMm) => {
  expect(gearPair({ moduleMm, driverTeeth: 40, drivenTeeth: 120, pressureAngleDeg: 20, torqueNm: 0 }).contactRatio).toBeCloseTo(1.79245, 5);
});

test('half a tooth is refused', () => {
  const answer = gearPair.answer({ moduleMm: 0.8, driverTeeth: 40.5, drivenTeeth: 120, pressureAngleDeg: 20, torqueNm: 0.1 });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'driverTeeth' }] });
});
