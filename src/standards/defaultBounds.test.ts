import { describe, expect, test } from 'vitest';
import { unitOfKey } from '../units/unitOfKey.ts';
import { type FigureBasis, defaultBounds } from './defaultBounds.ts';

const of = (key: string, value: number, basis: FigureBasis = 'typical') => defaultBounds({ value, key, unit: unitOfKey(key), basis });

describe('bounds nobody stated are those that such figures have (common practice where no source is named)', () => {
  test('four cells of lithium ion are 14.4 or 14.8 V (IEC 61960-3, from memory), not 13 and not 16', () => {
    const { low, high } = of('nominalV', 14.4);
    expect([low <= 14.4, high >= 14.8, low > 13, high < 16]).toEqual([true, true, true, true]);
  });
  test('the freezing point is in doubt as any temperature is, and a level in decibels by decibels', () => {
    expect(of('temperatureC', 0, 'estimate')).toEqual({ low: -5, high: 5 });
    expect(of('sensitivityDbm', -76)).toEqual({ low: -82, high: -70 });
    expect(of('gainDbi', 0, 'sheet')).toEqual({ low: -3, high: 3 });
  });
  test('gears, gauges, rates and channels come in fixed values (ISO 54, ASTM B258)', () => {
    for (const [key, value] of [['module', 0.8], ['awg', 20], ['maxFrameRateHz', 60], ['bandMHz', 5500], ['teeth', 40], ['packs', 2], ['maxReceivers', 4]] as const) expect(of(key, value)).toEqual({ low: value, high: value });
  });
  test('a 2× lens is no 1.8×, and a mount of 18 mm none of 19.25', () => {
    expect(of('squeeze', 2).low).toBeGreaterThan(1.9);
    expect(of('flangeMm', 18).high).toBeLessThan(18.1);
  });
  test('a part of a whole is never more than the whole', () => {
    for (const key of ['efficiency', 'transmittance', 'coldCapacityShare']) expect(of(key, 0.95).high).toBe(1);
  });
  test('a weighed mass is surer than a sheet, a sheet surer than a guess', () => {
    const widths = (['measured', 'sheet', 'estimate', 'typical'] as const).map((basis) => of('massG', 1000, basis).high - 1000);
    expect(widths).toEqual(widths.toSorted((a, b) => a - b));
    expect(widths[0]).toBeLessThanOrEqual(20);
  });
});
