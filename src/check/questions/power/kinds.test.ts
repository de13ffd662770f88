import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { dc, pack, screen, wiredShoot } from '../../../../test/wiredShoot.ts';
import { kinds } from './kinds.ts';

test('two kinds where one is wanted', () => {
  const shoot = (most: number) =>
    wiredShoot({ parts: { large: { ...pack(), name: 'Large pack' }, small: { ...pack(), name: 'Small pack' }, screen: screen({ 'dc-in': dc() }) }, pieces: { a: { of: 'large' }, b: { of: 'small' }, one: { of: 'screen' }, two: { of: 'screen' } }, lines: { a: ['a/tap-1', 'one/dc-in'], b: ['b/tap-1', 'two/dc-in'] } }, (draft) => { draft.needs.batteryKinds = most; });
  expect(askOne(kinds, shoot(1))).toMatchObject({ verdict: 'fails', says: '2 kinds of battery are used in a day: Large pack, Small pack.' });
  expect(askOne(kinds, shoot(2)).verdict).toBe('good');
});
