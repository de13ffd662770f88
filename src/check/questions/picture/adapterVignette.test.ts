import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { type Draft, exampleShoot, tinyShoot } from '../../../../test/tinyShoot.ts';
import { adapterVignette } from './adapterVignette.ts';

test('a beam and a glass of one size, a radius apart: 1.228370 over π of the light passes', () => {
  // MathWorld’s pair of unit circles, scaled by ten: f/2 of 40 mm is a beam 20 mm across, 10 mm off the middle at a rear glass 20 mm clear.
  const answer = askOne(adapterVignette, tinyShoot((draft: Draft) => {
    const { parts } = draft.kit;
    Object.assign(parts['taking-58'].lens, { focalLengthMm: 40, fNumber: 2, tStop: 2, pupils: { horizontal: { behindFrontMm: 25 }, vertical: { behindFrontMm: 25 } } });
    Object.assign(parts['block-1-5'].block, { squeeze: 1, elementSpacingMm: 10, rearToPupilGapMm: 0, rearClearMm: 20, frontClearMm: 200, transmittance: 1 });
    Object.assign(parts.focuser.focuser, { clearMm: 300, transmittance: 1 });
    Object.assign(parts.body.body.modes['open-gate'], { sensorWidthMm: 19.2, sensorHeightMm: 25.6, widthPx: 1920, heightPx: 2560 });
    draft.needs.delivery = { aspect: 0.75, widthPx: 1000 };
    draft.shots.portrait.tStop = 2;
  }));
  expect(answer.has?.amount.value).toBeCloseTo(1.22837 / Math.PI, 4);
  expect(answer).toMatchObject({ verdict: 'fails', says: expect.stringContaining('rear glass') as string });
});

test('the wide lens of the demo is cut, and a mend that is offered really sees past', () => {
  const answer = askOne(adapterVignette, exampleShoot('demo'), 'block-40');
  expect(answer.verdict).toBe('fails');
  for (const mend of answer.mends ?? []) expect(mend.use).toBeLessThanOrEqual(1);
});

test('figures of the block that are missing are named', () => {
  const answer = askOne(adapterVignette, tinyShoot((draft: Draft) => {
    delete draft.kit.parts['block-1-5'].block.rearClearMm;
  }));
  expect(answer).toMatchObject({ unknown: 'not entered', missing: [{ says: 'clear diameter at the rear of 1.5× block' }] });
});

test('without a block it is not asked', () => {
  expect(askAll(adapterVignette, tinyShoot((draft: Draft) => (draft.glasses.normal = { name: 'bare', stack: ['lens'], pieces: { lens: { of: 'taking-58' } } })))).toEqual([]);
});
