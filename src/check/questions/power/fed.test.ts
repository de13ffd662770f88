import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { dc, outlet, pack, screen, wiredShoot } from '../../../../test/wiredShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { fed } from './fed.ts';

const lead = { name: 'Tap lead', kind: 'cable', count: 9, cable: { carries: 'power', lengthMm: 300, ends: [{ connector: '2-pin tap', sex: 'male' }, { connector: '2-pin tap', sex: 'male' }] } };
const scene = (taps: number, window: object = {}) =>
  wiredShoot({
    parts: { lead, pack: pack({}, Object.fromEntries(Array.from({ length: taps }, (_, at) => [`tap-${at + 1}`, outlet('pack', { lowV: 12, highV: 16.8 })]))), screen: screen({ 'dc-in': dc(window) }), splitter: { name: 'Splitter', kind: 'splitter', ports: { in: { ...dc(), sex: 'male' }, a: outlet('in'), b: outlet('in') } } },
    pieces: { pack: { of: 'pack' }, screen: { of: 'screen' } }, lines: { body: ['pack/tap-1', 'body/dc-in', 'lead'] },
  });

test.each([['a free tap', 2, 'Tap lead from the tap 2 of Pack'], ['a splitter where none is free', 1, 'Splitter in the power output of Pack']])('a screen without power: %s is the cure, and applies', (_, taps, says) => {
  const shoot = scene(taps);
  const answer = askOne(fed, shoot, 'camera/screen');
  expect(answer).toMatchObject({ verdict: 'fails', says: 'Screen gets no power.', mends: [{ says }] });
  const edit = answer.mends?.[0]?.edit;
  const edited = edit === undefined ? undefined : applyEdit(shoot, edit);
  expect(edited?.ok === true && askAll(fed, edited.value.shoot).map(({ verdict }) => verdict)).toEqual(['good', 'good']);
});
test('a tap of another voltage is no cure', () => expect(askOne(fed, scene(2, { highV: 9 }), 'camera/screen').mends).toEqual([]));
