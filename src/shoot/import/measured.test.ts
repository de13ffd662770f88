import { expect, test } from 'vitest';
import { exampleShoot } from '../../../test/tinyShoot.ts';
import { type Measured, looksMeasured, readMeasured, takeMeasured } from './measured.ts';

const given = (figures: Measured['figures'], ticks: Measured['ticks'] = {}): Measured => ({ format: 'setworthy measured', version: 0, shoot: 'Slack Water', figures, ticks });
const on = '2026-11-25';

test('a measured figure of a part and of a copy is taken in, the copy’s own first; one that does not fit loses no other', () => {
  const { shoot, figures, faults } = takeMeasured(exampleShoot('demo'), given([
    { path: 'kit/parts/set-50/focus/ringTorqueNm', value: 0.12, measuredOn: on },
    { path: 'kit/copies/set-75-old/figures/focus/playDeg', value: 0.4, measuredOn: on },
    { path: 'kit/parts/set-50/focus/playDeg', value: -3, measuredOn: on },
    { path: 'kit/parts/nowhere/massG', value: 1, says: 'mass of it', measuredOn: on },
    { path: 'needs/region', value: 1, measuredOn: on },
    { path: 'kit/parts/__proto__/x', value: 1, measuredOn: on },
  ]));
  expect(figures).toBe(2);
  expect(shoot.kit.parts['set-50']?.focus?.ringTorqueNm).toEqual({ value: 0.12, basis: 'measured', measuredOn: on });
  expect(shoot.kit.copies?.['set-75-old']?.figures?.['focus/playDeg']).toEqual({ value: 0.4, basis: 'measured', measuredOn: on });
  expect(faults.map(({ path }) => path)).toEqual(expect.arrayContaining(['kit/parts/nowhere/massG', 'needs/region', 'kit/parts/__proto__/x']));
  expect(faults.some(({ path }) => path.includes('set-50/focus/playDeg'))).toBe(true);
});

test('ticks are added to those that are there', () => {
  const first = takeMeasured(exampleShoot('demo'), given([], { 'a|b': on })).shoot;
  expect(takeMeasured(first, given([], { 'a|c': '2026-11-26' })).shoot.ticks).toEqual({ 'a|b': on, 'a|c': '2026-11-26' });
});

test('a broken file is told with its places', () => {
  expect(looksMeasured('{"format": "setworthy measured"}')).toBe(true);
  expect(looksMeasured('name,kind\nA,lens')).toBe(false);
  expect(readMeasured('{"format": "setworthy measured", "version": 0, "shoot": "x", "figures": [{"path": "a", "value": "1", "measuredOn": "soon"}], "ticks": {}}')).toMatchObject({ ok: false });
  expect(readMeasured('{')).toMatchObject({ ok: false });
});
