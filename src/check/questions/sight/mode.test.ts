import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { coax, receiver, screen, sdi, transmitter, wiredShoot } from '../../../../test/wiredShoot.ts';
import { mode } from './mode.ts';

const MODES = { fast: { name: 'fast', delayMs: 2, widthPx: 1280, heightPx: 720 }, detailed: { name: 'detailed', delayMs: 95, widthPx: 1920, heightPx: 1080 } };
const scene = (set: string, jobs: readonly string[]) =>
  wiredShoot({
    parts: { tx: transmitter(MODES), rx: receiver(MODES), screen: screen({ 'sdi-in': sdi('in') }), coax: coax(500) },
    pieces: { tx: { of: 'tx', net: 'a', mode: set }, rx: { of: 'rx', net: 'a' }, screen: { of: 'screen' } }, lines: { a: ['body/sdi-out', 'tx/sdi-in', 'coax'], b: ['rx/sdi-out', 'screen/sdi-in', 'coax'] },
  }, (draft) => {
    draft.crew = { puller: { role: 'puller' }, director: { role: 'director' } };
    draft.needs.viewers = Object.fromEntries(jobs.map((job, at) => [`v-${at}`, { who: job === 'direct' ? 'director' : 'puller', job, screen: 'camera/screen', distanceMm: 500 }]));
  });

test('the puller takes the fast mode, the director the detailed one (common practice)', () => {
  expect(askOne(mode, scene('fast', ['pull focus'])).verdict).toBe('good');
  expect(askOne(mode, scene('detailed', ['direct'])).verdict).toBe('good');
  expect(askOne(mode, scene('detailed', ['pull focus'])).says).toBe('The mode fast of Transmitter would serve better than detailed.');
  expect(askOne(mode, scene('fast', ['direct'])).says).toBe('The mode detailed of Transmitter would serve better than fast.');
});
test('where one must serve two jobs, it says who loses', () => {
  expect(askOne(mode, scene('fast', ['pull focus', 'direct']))).toMatchObject({ verdict: 'tight', says: 'No mode of Transmitter serves all: in fast director loses.' });
});
