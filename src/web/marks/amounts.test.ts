import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { readTyped, textOf } from './amounts.ts';

property.prop([fc.double({ min: 0.01, max: 1e5, noNaN: true }), fc.constantFrom('mm' as const, 'm' as const, 'g' as const, '°C' as const, 'share' as const, 'V' as const, 'N·m' as const), fc.constantFrom('metric' as const, 'imperial' as const)])(
  'what a field shows reads back as it was, to its digits', (value, unit, system) => {
    expect(readTyped(textOf(value, unit, system), unit, system)).toBeCloseTo(value, 2 - Math.ceil(Math.log10(value + 20)) + 2);
  });

test('lengths may be typed as people type them; an inch has 25.4 mm (ISO 80000-3)', () => {
  expect(readTyped(`5'6"`, 'm', 'metric')).toBeCloseTo(1.6764, 9);
  expect(readTyped('2', 'mm', 'imperial')).toBeCloseTo(50.8, 9);
  expect(readTyped('168 cm', 'mm', 'imperial')).toBe(1680);
  expect(readTyped('heavy', 'g', 'metric')).toBeUndefined();
  expect(readTyped('50', '°C', 'imperial')).toBeCloseTo(10, 9);
  // 1 lbf·in = 1.129 848 × 10⁻¹ N·m (NIST SP 811, appendix B.8).
  expect(readTyped('1', 'N·m', 'imperial')).toBeCloseTo(0.112_984_8, 7);
});
