import { describe, expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { receiver, transmitter, wiredShoot } from '../../../../test/wiredShoot.ts';
import { link } from './link.ts';

const scene = (rx: object, shot: object) =>
  wiredShoot({
    parts: { tx: transmitter({ fast: { name: 'fast', delayMs: 2 }, far: { name: 'far', delayMs: 9 } }, { bandMHz: 5180 }), rx: receiver({ fast: { name: 'fast', sensitivityDbm: -76 }, far: { name: 'far', sensitivityDbm: -82 } }, { bandMHz: 5180, ...rx }) },
    pieces: { tx: { of: 'tx', net: 'a', mode: 'fast' }, rx: { of: 'rx', net: 'a' } },
  }, (draft) => Object.assign(draft.shots.portrait, { place: 'exterior', ...shot }));
const margin = (rx: object, shot: object) => askOne(link, scene(rx, shot)).has?.amount.value;

describe('estimated (ITU-R P.525: 86.734 dB at 5180 MHz and 100 m)', () => {
  test('20 dBm sent, 4 dBi, −76 dBm heard: 13.27 dB over 100 m', () => expect(margin({}, { linkDistanceM: 100 })).toBeCloseTo(20 + 4 - 86.734 + 76, 2));
  test('good asks for the doubt of ± 10 dB to spare', () => expect([50, 100, 200, 400, 600].map((linkDistanceM) => askOne(link, scene({}, { linkDistanceM })).verdict)).toEqual(['good', 'good', 'tight', 'tight', 'fails']));
});

describe('walked', () => {
  const walked = { breaksUpAtM: 200 };
  test('a tenth of the distance leaves 20 dB', () => expect(margin(walked, { linkDistanceM: 20 })).toBeCloseTo(20, 9));
  test('each person in the way takes the same, water takes more', () => {
    const [bare, one, two, water] = [{}, { obstacles: { bodies: 1 } }, { obstacles: { bodies: 2 } }, { obstacles: { water: true } }].map((shot) => margin(walked, { linkDistanceM: 20, ...shot }) ?? 0);
    expect([(bare ?? 0) - (one ?? 0), (one ?? 0) - (two ?? 0)]).toEqual([8, 8]);
    expect(water).toBeLessThan(bare ?? 0);
  });
  test('broken up: nearer and the mode that hears 6 dB more are the cures', () => {
    const answer = askOne(link, scene(walked, { linkDistanceM: 400 }));
    expect(answer.verdict).toBe('fails');
    expect(answer.mends?.map(({ says }) => says)).toEqual([expect.stringMatching(/^keep the receiver within 126/) as string, 'the mode far on Transmitter and every receiver']);
  });
});
