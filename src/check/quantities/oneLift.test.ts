import { expect, test } from 'vitest';
import { oneLift } from './oneLift.ts';

const LB = 453.592_37;

test('loading punch press stock: 16.3 lb where it is picked up, 14.5 lb where it is set down, index 2.7 and 3.0 (NIOSH 94-110, example 1, from memory)', () => {
  // 44 lb, 23 in ahead, from 15 to 64 in, fingers under it. The manual rounds each multiplier and takes 51 lb for 23 kg.
  const massG = 44 * LB;
  const found = oneLift({ massG, fromMm: 15 * 25.4, toMm: 64 * 25.4, acrossMm: 2 * (23 * 25.4 - 200), grip: 'fair' });
  expect(found.pickedUpG / LB / 16.3).toBeCloseTo(1, 1);
  expect(found.setDownG / LB / 14.5).toBeCloseTo(1, 0);
  expect(Math.abs(massG / found.pickedUpG - 2.7)).toBeLessThan(0.15);
  expect(Math.abs(found.index - 3)).toBeLessThan(0.25);
  expect(found.worse).toBe('setting it down');
});

test('15 kg of loose metal from the floor to a table 115 cm up, 30 cm ahead, nothing to hold: 11.4 kg (CCOHS, worked example of the equation, read; its multipliers are rounded)', () => {
  const found = oneLift({ massG: 15_000, fromMm: 0, toMm: 1150, acrossMm: 100, grip: 'poor' });
  expect(Math.abs(found.pickedUpG - 11_400)).toBeLessThan(150);
  expect(found).toMatchObject({ worse: 'picking it up', limitG: found.pickedUpG });
});

test('hands below knee height reach 5 cm further: 25 cm and half the depth (NIOSH 94-110, from memory)', () => {
  const at = (fromMm: number) => oneLift({ massG: 1000, fromMm, toMm: fromMm, acrossMm: 300, grip: 'good' }).pickedUpG;
  expect(at(249) / at(250)).toBeCloseTo(350 / 400, 2);
});

test('hands above 175 cm: not to be lifted so', () => expect(oneLift({ massG: 1000, fromMm: 800, toMm: 1751, acrossMm: 200, grip: 'good' })).toMatchObject({ limitG: 0, index: Infinity }));
