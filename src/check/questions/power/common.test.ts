import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { dc, pack, screen, wiredShoot } from '../../../../test/wiredShoot.ts';
import { common } from './common.ts';

const small = { ...pack({ nominalV: 7.2, capacityAh: 4, openCircuit: [[0, 6], [1, 8.4]], cutoffV: 6 }), name: 'Small pack' };
const scene = (highV: number) =>
  wiredShoot({ parts: { small, large: { ...pack({ capacityAh: 10 }), name: 'Large pack' }, screen: screen({ 'dc-in': dc({ lowV: 6, highV }) }) }, pieces: { a: { of: 'small' }, b: { of: 'small' }, one: { of: 'screen' }, two: { of: 'screen' } }, lines: { a: ['a/tap-1', 'one/dc-in'], b: ['b/tap-1', 'two/dc-in'] } });

test('one large pack could feed what two small ones do: it says what that saves and what it would darken', () => {
  const answer = askOne(common, scene(17));
  expect(answer).toMatchObject({ verdict: 'tight', says: 'One Large pack could feed all of Camera on sticks: 2 changes become one, and one change then darkens all.' });
  expect(answer.steps?.map(({ says }) => says)).toContain('would go dark together: Screen, Screen');
});
test('where its voltage suits nothing there, packs stay apart', () => expect(askOne(common, scene(9)).verdict).toBe('good'));
test('a build on one pack is not asked', () => expect(askAll(common, wiredShoot({ parts: { small, screen: screen({ 'dc-in': dc() }) }, pieces: { a: { of: 'small' }, one: { of: 'screen' } }, lines: { a: ['a/tap-1', 'one/dc-in'] } }))).toEqual([]));
