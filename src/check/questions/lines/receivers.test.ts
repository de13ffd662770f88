import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { receiver, transmitter, wiredShoot } from '../../../../test/wiredShoot.ts';
import { receivers } from './receivers.ts';

const MODES = { fast: { name: 'fast', delayMs: 2 } };
const scene = (count: number, more: object = {}) =>
  wiredShoot({ parts: { tx: transmitter(MODES), rx: receiver(MODES) }, pieces: { tx: { of: 'tx', net: 'a' }, ...Object.fromEntries(Array.from({ length: count }, (_, at) => [`rx-${at}`, { of: 'rx', net: 'a' }])), ...more } });

test('two of two hold, three do not', () => {
  expect(askOne(receivers, scene(2))).toMatchObject({ verdict: 'good', use: 1 });
  expect(askOne(receivers, scene(3))).toMatchObject({ verdict: 'fails', use: 1.5 });
});
test('two transmitters on one net', () => expect(askAll(receivers, scene(1, { second: { of: 'tx', net: 'a' } })).map(({ verdict }) => verdict)).toEqual(['good', 'fails']));
