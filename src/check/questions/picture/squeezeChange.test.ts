import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { squeezeChange } from './squeezeChange.ts';

const MARKS = [{ distanceMm: 'infinity', squeeze: 2 }, { distanceMm: 3000, squeeze: 1.96 }, { distanceMm: 1000, squeeze: 1.85 }];

/** A 2× lens with measured marks, and a subject at some distances. */
const lensAt = (distances: readonly number[], more: (draft: Draft) => void = () => undefined) => tinyShoot((draft: Draft) => {
  const part = draft.kit.parts['taking-58'];
  part.lens = { ...part.lens, squeeze: 2, squeezeAt: MARKS };
  draft.glasses.normal = { name: '2× lens', stack: ['lens'], pieces: { lens: { of: 'taking-58' } } };
  draft.shots.portrait.subject = distances.map((distanceMm, atS) => ({ atS, distanceMm }));
  more(draft);
});

test('at the marks it is what was measured: a face is broader by nominal over measured', () => {
  const answer = askOne(squeezeChange, lensAt([3000, 1000]));
  expect(answer.needs?.amount.value).toBeCloseTo(2 / 1.85 - 1, 9);
  expect(answer).toMatchObject({ verdict: 'fails', says: expect.stringContaining('broad') as string });
  // Widened half way between, half of the change is left: a twentieth is the limit.
  expect(answer.mends?.[0]?.says).toBe('Widen this shot by 1.91 instead of 2');
  expect(answer.mends?.[0]?.use).toBeCloseTo((1.91 / 1.85 - 1) / 0.05, 6);
});

test('a close-up lens shifts the marks: seen through it, the ring stands farther', () => {
  const bare = askOne(squeezeChange, lensAt([1000]));
  const through = askOne(squeezeChange, lensAt([1000], (draft) => {
    draft.kit.parts['plus-0-5'] = { name: 'Close-up +0.5', kind: 'close-up', closeUp: { powerDpt: 0.5 } };
    draft.shots.portrait.diopter = 'plus-0-5';
  }));
  expect(through.use).toBeLessThan(bare.use ?? 0);
});

test('outside the marks it is not entered rather than guessed', () => {
  expect(askOne(squeezeChange, lensAt([800]))).toMatchObject({ unknown: 'not entered', missing: [{ says: expect.stringContaining('0.80') as string }] });
});

test('behind a focuser in front the block sees parallel light, marks or not', () => {
  const shoot = tinyShoot((draft: Draft) => (draft.kit.parts['block-1-5'].block.squeezeAt = MARKS));
  expect(askOne(squeezeChange, shoot).verdict).toBe('good');
  expect(askAll(squeezeChange, tinyShoot())).toEqual([]);
});
