import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { ambientContrast } from './ambientContrast.ts';

const light = fc.double({ min: 0, max: 120_000, noNaN: true });
property.prop([light, light, fc.double({ min: 0, max: 0.2, noNaN: true })])('more light never leaves more contrast', (a, b, reflectance) => {
  const at = (illuminanceLux: number) => ambientContrast({ whiteCdPerM2: 1500, blackCdPerM2: 1, reflectance, illuminanceLux }).contrastRatio;
  expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)) * (1 + 1e-12));
});

test('in the dark it is the contrast of the panel, and of a black panel infinite', () => {
  expect(ambientContrast({ whiteCdPerM2: 1000, blackCdPerM2: 1, reflectance: 0.01, illuminanceLux: 0 }).contrastRatio).toBe(1000);
  expect(ambientContrast({ whiteCdPerM2: 1000, blackCdPerM2: 0, reflectance: 0.01, illuminanceLux: 0 }).contrastRatio).toBe(Infinity);
  expect(ambientContrast.answer({ whiteCdPerM2: 1000, blackCdPerM2: 1, reflectance: 1.5, illuminanceLux: 0 })).toMatchObject({ ok: false,
    faults: [{ path: 'reflectance' }] });
});
