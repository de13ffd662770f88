import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { transmitter, wiredShoot } from '../../../../test/wiredShoot.ts';
import { channels } from './channels.ts';

const scene = (a: object, b: object, bandwidthMHz: number, bandMHz = 5500) => {
  const modes = { fast: { name: 'fast', bandwidthMHz } };
  return wiredShoot({ parts: { tx: transmitter(modes, { channels: [36, 44, 52], bandMHz }) }, pieces: { a: { of: 'tx', net: 'a', ...a }, b: { of: 'tx', net: 'b', ...b } } });
};

test.each([
  ['36 and 40 are apart at 20 MHz', { channel: 36 }, { channel: 40 }, 20, 'good'],
  ['and one block at 40 MHz (IEEE 802.11)', { channel: 36 }, { channel: 40 }, 40, 'fails'],
  ['36 and 44 are apart at 40 MHz', { channel: 36 }, { channel: 44 }, 40, 'good'],
])('%s', (_, a, b, width, verdict) => expect(askOne(channels, scene(a, b, width), 'camera/a').verdict).toBe(verdict));

test('a free channel is the cure', () => expect(askOne(channels, scene({ channel: 36 }, { channel: 36 }, 20), 'camera/a').mends?.[0]?.says).toBe('channel 44 on Transmitter'));
test('a channel that is not set is asked for', () => expect(askOne(channels, scene({ channel: 36 }, {}, 20))).toMatchObject({ unknown: 'not entered' }));
test('one transmitter alone does not arise', () => expect(askAll(channels, wiredShoot({ parts: { tx: transmitter({ fast: { name: 'fast' } }) }, pieces: { a: { of: 'tx', net: 'a' } } }))).toEqual([]));
test('narrow channels at 2.4 GHz: 11 is 2405, 12 is 2410 MHz (IEEE 802.15.4)', () => {
  const answer = askOne(channels, scene({ channel: 11 }, { channel: 12 }, 2, 2400), 'camera/a');
  expect([answer.verdict, answer.steps?.[0]?.says]).toEqual(['good', 'Transmitter: 2404 to 2406 MHz']);
});
