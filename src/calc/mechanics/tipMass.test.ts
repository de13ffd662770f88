import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { roundSection } from './roundSection.ts';
import { tipMass } from './tipMass.ts';

const bar = { lengthMm: 200, outerMm: 15, innerMm: 12, youngGPa: 71, densityKgPerM3: 2700 };
const barG = 2700 * roundSection(15, 12).areaMm2 * 200 * 1e-6;
/** ω·√(ρAL⁴/EI) of a frequency. */
const bare = (hertz: number) => 2 * Math.PI * hertz * Math.sqrt(((barG / 1000) * 0.2 ** 3) / (71e9 * roundSection(15, 12).bendingMm4 * 1e-12));

test('with its own mass at the tip: 1.557298, 16.25009, 50.89584 (published table)', () => {
  const { frequencyHz, secondHz, thirdHz } = tipMass({ ...bar, tipMassG: barG });
  expect(bare(frequencyHz)).toBeCloseTo(1.557_298, 6);
  expect(bare(secondHz)).toBeCloseTo(16.250_09, 5);
  expect(bare(thirdHz)).toBeCloseTo(50.895_84, 5);
});

test('one kilogram at the tip: 31.33 Hz, as with 0.2357 of the tube lumped there', () => {
  expect(tipMass({ ...bar, tipMassG: 1000 }).frequencyHz).toBeCloseTo(31.33, 2);
});

const mass = fc.double({ min: 1, max: 1e5, noNaN: true });

property.prop([mass, mass])('more mass is slower, in each of the three', (lightG, moreG) => {
  const [light, heavy] = [tipMass({ ...bar, tipMassG: lightG }), tipMass({ ...bar, tipMassG: lightG + moreG })];
  expect(heavy.frequencyHz).toBeLessThan(light.frequencyHz);
  expect(heavy.secondHz).toBeLessThanOrEqual(light.secondHz * (1 + 1e-9));
  expect(heavy.thirdHz).toBeLessThanOrEqual(light.thirdHz * (1 + 1e-9));
});

test('a very heavy tip swings on the bar as on a spring, 3EI/L³', () => {
  const springNPerM = (3 * 71e9 * roundSection(15, 12).bendingMm4 * 1e-12) / 0.2 ** 3;
  const spring = Math.sqrt(springNPerM / 1e4) / (2 * Math.PI);
  expect(tipMass({ ...bar, tipMassG: 1e7 }).frequencyHz / spring).toBeCloseTo(1, 5);
});
