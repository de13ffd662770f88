import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { receiver, transmitter, wiredShoot } from '../../../../test/wiredShoot.ts';
import { radar } from './radar.ts';

const scene = (channel: number, resetMin: number) =>
  wiredShoot({ parts: { tx: transmitter({ fast: { name: 'fast', bandwidthMHz: 20 } }, { channels: [36, 100, 120], relinkS: 6 }), rx: receiver({ fast: { name: 'fast' } }) }, pieces: { tx: { of: 'tx', net: 'a', channel }, rx: { of: 'rx', net: 'a' } } }, (draft) => {
    draft.needs.region = 'EU';
    draft.shots.portrait.resetMin = resetMin;
  });

test('60 s of listening and 6 s of link against 2 min', () => expect(askOne(radar, scene(100, 2))).toMatchObject({ verdict: 'good', use: 66 / 120 }));
test('near weather radar it is 600 s (EN 301 893): the picture stays away, and a channel without radar is the cure', () => {
  expect(askOne(radar, scene(120, 5))).toMatchObject({ verdict: 'fails', needs: { amount: { value: 606 } }, mends: [{ says: 'channel 36, where no radar is minded', use: 6 / 300 }] });
});
test('a channel without radar does not arise', () => expect(askAll(radar, scene(36, 2))).toEqual([]));
