import { expect, test } from 'vitest';
import { exampleShoot } from '../../../test/tinyShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { Asking } from '../Asking.ts';
import { transmitterModes } from './transmitterModes.ts';
import { videoChainDelay } from './videoChainDelay.ts';
import { visibleBlur } from './visibleBlur.ts';

const subject = { setup: 'jetty-sticks', glass: 'set-75', viewer: 'puller' };
const inMode = (mode: string) =>
  new Asking(new Ledger(exampleShoot('demo', (draft) => {
    for (const [build, piece] of [['tripod', 'tx'], ['puller-station', 'rx'], ['director-station', 'rx']] as const) draft.builds[build].pieces[piece].mode = mode;
  })));

test.each(['fast', 'detailed'])('what is told of the mode %s from the other one is what tracing finds once it is set', (mode) => {
  const set = inMode(mode);
  const told = transmitterModes(inMode(mode === 'fast' ? 'detailed' : 'fast'), subject).find(({ id }) => id === mode);
  expect(told?.now).toBe(false);
  expect(told?.pictureDelayMs).toBeCloseTo(videoChainDelay(set.ledger, subject)?.value ?? Number.NaN, 9);
  expect(told?.visibleBlurMm).toBeCloseTo(visibleBlur(set, subject)?.blurMm ?? Number.NaN, 9);
});

test('a picture by cable has no modes', () => {
  expect(transmitterModes(inMode('fast'), { ...subject, viewer: 'operator' })).toEqual([]);
});
