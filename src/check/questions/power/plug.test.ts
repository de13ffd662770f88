import { describe, expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { dc, outlet, pack, screen, wiredShoot } from '../../../../test/wiredShoot.ts';
import { plug } from './plug.ts';

const barrel = { connector: 'barrel 5.5×2.1' };
const scene = (out: object, into: object, crossed = false) =>
  wiredShoot({
    parts: { pack: pack({}, { tap: { ...outlet('pack', out), ...barrel } }), screen: screen({ 'dc-in': { ...dc(into), ...barrel } }), lead: { name: 'Lead', kind: 'cable', cable: { carries: 'power', lengthMm: 300, ends: [{ ...barrel, sex: 'male' }, { ...barrel, sex: 'male' }], crossed } }, regulator: { name: 'Regulator', kind: 'regulator', ports: { in: dc({ lowV: 10, highV: 20 }), out: outlet('in', { outputV: 8 }) } } },
    pieces: { pack: { of: 'pack' }, screen: { of: 'screen' } }, lines: { a: ['pack/tap', 'screen/dc-in', 'lead'] },
  });
const verdict = (...given: Parameters<typeof scene>) => askOne(plug, scene(...given)).verdict;

describe('the same plug with another voltage or polarity is blocked, not warned (common practice)', () => {
  test('a full pack of 16.8 V into 9 V', () => expect(askOne(plug, scene({}, { lowV: 7, highV: 9 }))).toMatchObject({ verdict: 'fails', says: expect.stringMatching(/^Blocked: Pack gives up to 16\.8/) as string, mends: [{ says: 'Regulator between them' }] }));
  test('into 16.8 V exactly it goes, into 16.79 not', () => expect([verdict({}, { highV: 16.8 }), verdict({}, { highV: 16.79 })]).toEqual(['good', 'fails']));
  test('too low to start at all', () => expect(askOne(plug, scene({}, { lowV: 18, highV: 30 })).says).toMatch(/^Blocked: Pack gives at most/));
  test.each([
    ['plus meets plus', 'centre plus', 'centre plus', false, 'good'], ['plus meets minus', 'centre plus', 'centre minus', false, 'fails'],
    ['a crossed cable puts it right', 'centre plus', 'centre minus', true, 'good'], ['a crossed cable turns it over', 'centre plus', 'centre plus', true, 'fails'],
  ])('%s', (_, from, to, crossed, expected) => expect(verdict({ polarity: from }, { polarity: to }, crossed)).toBe(expected));
  test('a barrel whose polarity one end does not state: check with a meter', () => expect(askOne(plug, scene({ polarity: 'centre plus' }, {})).notes?.[0]).toContain('meter'));
});
test.each([
  ['its highest voltage', { lowV: 7 }, 'unknown'], ['its lowest voltage', { highV: 17 }, 'unknown'],
  ['the lowest, where the highest alone blocks it', { highV: 9 }, 'fails'], ['the highest, where the lowest alone blocks it', { lowV: 18 }, 'fails'],
])('a device that does not state %s', (_, stated, expected) => {
  const screenOf = { ...screen({ 'dc-in': { kind: 'power', way: 'in', connector: '2-pin tap', power: stated } }) };
  const shoot = wiredShoot({ parts: { pack: pack(), screen: screenOf }, pieces: { pack: { of: 'pack' }, screen: { of: 'screen' } }, lines: { a: ['pack/tap-1', 'screen/dc-in'] } });
  expect(askOne(plug, shoot).verdict).toBe(expected);
});
test('a window that is not entered is asked for', () => expect(askOne(plug, wiredShoot({ parts: { pack: pack(), screen: screen({ 'dc-in': { kind: 'power', way: 'in', connector: '2-pin tap' } }) }, pieces: { pack: { of: 'pack' }, screen: { of: 'screen' } }, lines: { a: ['pack/tap-1', 'screen/dc-in'] } }))).toMatchObject({ unknown: 'not entered' }));
