import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { printDistance, readLength } from './length.ts';
import { printAmount, printNumber } from './print.ts';
import { unitOfKey } from './unitOfKey.ts';

describe('reading lengths', () => {
  test.each([
    [`5'6"`, 1676.4], [`5'`, 1524], [`6"`, 152.4], [`5 ft 6 in`, 1676.4], [`5'6 1/2"`, 1689.1], [`1/2"`, 12.7], ['1.68 m', 1680], ['1,68m', 1680], ['168 cm', 1680], ['66in', 1676.4],
    ['∞', Infinity], ['Inf', Infinity], [`5’6”`, 1676.4], [`5'-6"`, 1676.4],
  ])('%s is %d mm', (text, mm) => expect(readLength(text)).toMatchObject({ ok: true, value: expect.closeTo(mm, 6) as number }));

  test.each(['', '12', 'five feet', '6"5\'', '5\'6', '1.2.3 m', '-3 m', '1e3 m'])('%s is refused with a cure', (text) =>
    expect(readLength(text)).toMatchObject({ ok: false, faults: [{ cure: expect.stringContaining('as in') as string }] }));
});

property.prop([fc.integer({ min: 1, max: 100_000 })])('a printed imperial distance reads back within its step', (mm) => {
  const back = readLength(printDistance(mm, 'imperial'));
  expect(back.ok && Math.abs(back.value - mm)).toBeLessThanOrEqual(mm < 3048 ? 6.36 : 12.71);
});

test('numbers keep three digits and no tail', () => {
  expect([0.123456, 12.3456, 1234.56, 123456, 1, 0.5, 1e9].map((value) => printNumber(value))).toEqual([
    '0.123', '12.3', '1235', '123\u2009456', '1', '0.5', '1.00e+9',
  ]);
});

test('what rounding left over prints as nothing', () => {
  expect([printAmount({ value: 7.7e-10, unit: 'mm' }, 'imperial'), printAmount({ value: -8.9e-16, unit: 'h' }), printAmount({ value: 1e-12, unit: 'deg' })]).toEqual(['0\u2009in', '0\u2009h', '0°']);
  expect(printAmount({ value: 0.0005, unit: 'mm' })).toBe('0.0005\u2009mm');
});

test('amounts follow the system', () => {
  expect(printAmount({ value: 2500, unit: 'g' })).toBe('2.5\u2009kg');
  expect(printAmount({ value: 453.59237, unit: 'g' }, 'imperial')).toBe('1\u2009lb');
  expect(printAmount({ value: 1.6764, unit: 'm' }, 'imperial')).toBe(`5'6"`);
  expect(printAmount({ value: 0.25, unit: 'share' })).toBe('25\u2009%');
});

test('force and torque in pounds: 1 lbf is 4.448222 N, 1 lbf·in 0.1129848 N·m, 1 lbf/in 175.1268 N/m (NIST SP 811, appendix B.8)', () => {
  const shown = (value: number, unit: Parameters<typeof printAmount>[0]['unit']) => printAmount({ value, unit }, 'imperial');
  expect([shown(4.448_222, 'N'), shown(0.112_984_8, 'N·m'), shown(112.9848, 'N·mm'), shown(0.175_126_8, 'N/mm')]).toEqual(['1\u2009lbf', '1\u2009lbf·in', '1\u2009lbf·in', '1\u2009lbf/in']);
  expect([shown(6.08, 'N·m'), shown(0.31, 'N·m')]).toEqual(['53.8\u2009lbf·in', '2.74\u2009lbf·in']);
  expect(printAmount({ value: 6.08, unit: 'N·m' })).toBe('6.08\u2009N·m');
});

test('a key carries its unit', () => {
  expect(['ringTorqueNm', 'focalLengthMm', 'massG', 'delayMs', 'widthPx', 'squeeze', 'tStop', 'frameRateHz', 'loadW', 'capacityAh'].map(unitOfKey)).toEqual([
    'N·m', 'mm', 'g', 'ms', 'px', 'ratio', 'ratio', 'Hz', 'W', 'Ah',
  ]);
});
