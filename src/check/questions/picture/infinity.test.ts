import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { infinity } from './infinity.ts';

const with58 = (lens: object, shot: object = {}) => tinyShoot((draft: Draft) => {
  Object.assign(draft.kit.parts['taking-58'].lens, { fNumber: 2, tStop: 2, ...lens });
  Object.assign(draft.kit.parts['block-1-5'].block, { squeeze: 2, transmittance: 1 });
  draft.kit.parts.focuser.focuser.transmittance = 1;
  draft.shots.portrait = { ...draft.shots.portrait, tStop: 2.8, circleOfConfusionMm: 0.025, ...shot };
  draft.needs.delivery.circleOfConfusionMm = 0.025;
});

test('what no setting of the focuser takes away, found by trying them all', () => {
  const answer = askOne(infinity, with58({ infinityErrorMm: 40_000 }));
  // The image lies e behind the sensor in both meridians of the taking lens; the focuser moves the vertical one by x, the horizontal by x/q²; shown, the horizontal blur is q times as wide.
  const e = 58 ** 2 / (40_000 - 58);
  const left = Array.from({ length: 20_001 }, (_, step) => (step / 10_000) * 2 * e).map((x) => Math.max(Math.abs(e - x), 2 * Math.abs(e - x / 4)));
  expect(answer.needs?.amount.value).toBeCloseTo(Math.min(...left), 5);
  expect(answer.has?.amount.value).toBeCloseTo(0.025 * 2.8, 9);
  expect(answer.verdict).toBe('fails');
  expect(answer.mends?.map(({ says }) => says)).toEqual([expect.stringMatching(/0.0842\s*mm nearer the sensor/), 'Stop down to T4']);
});

test('beyond infinity is as far off the other way', () => {
  const answer = askOne(infinity, with58({ infinityErrorMm: -40_000 }));
  expect(answer.use).toBe(askOne(infinity, with58({ infinityErrorMm: 40_000 })).use);
  expect(answer.mends?.[0]?.says).toContain('farther from the sensor');
});

test('checked on the bench it is good; never looked at it is not entered, with the way to measure it', () => {
  expect(askOne(infinity, with58({ trueInfinity: true }))).toMatchObject({ verdict: 'good', use: 0 });
  expect(askOne(infinity, with58({}))).toMatchObject({ unknown: 'not entered', missing: [{ measure: expect.stringContaining('distant lamp') as string }] });
});

test('a close-up lens behind the block spoils infinity; it belongs on the front', () => {
  const shoot = tinyShoot((draft: Draft) => {
    draft.kit.parts['plus-1'] = { name: 'Close-up +1', kind: 'close-up', closeUp: { powerDpt: 1 } };
    draft.glasses.normal.pieces['plus'] = { of: 'plus-1' };
    draft.glasses.normal.stack = ['lens', 'plus', 'block', 'focuser'];
  });
  expect(askOne(infinity, shoot)).toMatchObject({ verdict: 'fails', mends: [{ says: 'Put Close-up +1 on the front, ahead of the anamorphot' }] });
});

test('a lens that focuses by itself is not asked', () => {
  expect(askAll(infinity, tinyShoot((draft: Draft) => (draft.glasses.normal = { name: 'bare', stack: ['lens'], pieces: { lens: { of: 'taking-58' } } })))).toEqual([]);
});
