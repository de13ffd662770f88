import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { dc, outlet, pack, screen, wiredShoot } from '../../../../test/wiredShoot.ts';
import { window } from './window.ts';

const lead = (awg: number, lengthMm: number) => ({ name: `Lead of gauge ${awg}`, kind: 'cable', count: 3, cable: { carries: 'power', lengthMm, awg, ends: [{ connector: '2-pin tap', sex: 'male' }, { connector: '2-pin tap', sex: 'male' }] } });
const scene = (watts: number, lowV: number, cable: object, more: object = {}) =>
  wiredShoot({
    parts: { pack: pack(more), screen: screen({ 'dc-in': dc({ lowV }) }, { draw: { typicalW: watts } }), lead: cable, thick: lead(14, 800) }, pieces: { pack: { of: 'pack' }, screen: { of: 'screen' } }, lines: { a: ['pack/tap-1', 'screen/dc-in', 'lead'] },
  }, (draft) => { draft.assumptions = { 'power.contactOhm': 0 }; });

test('gauge 18, 3 m, 5 A: 0.62845 V are lost there and back in solid wire (ASTM B258, IEC 60028), 3.5 % more in stranded', () => {
  const volts = askOne(window, scene((12 - 0.62845 * 1.035) * 5, 7, lead(18, 3000))).has?.amount.value;
  expect(volts).toBeCloseTo(12 - 0.62845 * 1.035, 4);
});
test('a device that wants 13 V of a pack from 16.8 to 12 V uses 3.8/4.8 of it, and the voltage in the cable besides', () => {
  const answer = askOne(window, scene(5, 13, lead(18, 100)));
  expect(answer.has?.amount.value).toBeCloseTo(3.8 / 4.8, 2);
  expect(answer.verdict).toBe('good');
});
test('a thin cable costs charge; a thicker one of the kit gives it back', () => {
  const answer = askOne(window, scene(25, 13, lead(26, 2000)));
  expect([answer.verdict, answer.mends?.[0]?.says]).toEqual(['fails', expect.stringMatching(/^Lead of gauge 14 instead/)]);
  expect(answer.mends?.[0]?.use).toBeLessThan(answer.use ?? 0);
});
test('cold costs charge too', () => {
  const got = (coldOhmRatio: number) =>
    askOne(window, wiredShoot({ parts: { pack: pack({ internalOhm: 0.2, coldOhmRatio }), screen: screen({ 'dc-in': dc({ lowV: 13 }) }, { draw: { typicalW: 25 } }) }, pieces: { pack: { of: 'pack' }, screen: { of: 'screen' } }, lines: { a: ['pack/tap-1', 'screen/dc-in'] } }, (draft) => { draft.days.one.temperatureC = 0; })).has?.amount.value ?? 0;
  expect(got(3)).toBeLessThan(got(1));
});
test('behind a regulator it does not arise', () => {
  const regulator = { name: 'Regulator', kind: 'regulator', ports: { in: dc({ lowV: 10 }), out: outlet('in', { outputV: 8 }) } };
  expect(askAll(window, wiredShoot({ parts: { pack: pack(), regulator, screen: screen({ 'dc-in': dc() }) }, pieces: { pack: { of: 'pack' }, regulator: { of: 'regulator' }, screen: { of: 'screen' } }, lines: { a: ['pack/tap-1', 'regulator/in'], b: ['regulator/out', 'screen/dc-in'] } }))).toEqual([]);
});
