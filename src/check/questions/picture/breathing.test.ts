import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { breathing } from './breathing.ts';

const bare = (lens: object, distances: readonly (number | 'infinity')[], motion: 'rack' | 'smooth' = 'rack') => tinyShoot((draft: Draft) => {
  const part = draft.kit.parts['taking-58'];
  part.lens = { ...part.lens, focalLengthMm: 50, ...lens };
  part.focus.closeMm = 400;
  draft.glasses.normal = { name: 'bare', stack: ['lens'], pieces: { lens: { of: 'taking-58' } } };
  Object.assign(draft.shots.portrait, { motion, subject: distances.map((distanceMm, atS) => ({ atS, distanceMm })) });
});

test('a thin 50 mm from infinity to 450 mm ahead of it sees a ninth less', () => {
  const answer = askOne(breathing, bare({}, ['infinity', 506.25]));
  expect(answer.needs?.amount.value).toBeCloseTo(1 / 9, 9); // m = 0.125, the share is 1/1.125
  expect(answer).toMatchObject({ verdict: 'fails', says: expect.stringContaining('tightens') as string });
});

test('measured fields come first; the same change disturbs half as much while focus follows', () => {
  const fields = { breathing: [{ distanceMm: 'infinity', fieldShare: 1 }, { distanceMm: 500, fieldShare: 0.93 }] };
  const [rack, follow] = [askOne(breathing, bare(fields, ['infinity', 500])), askOne(breathing, bare(fields, ['infinity', 500], 'smooth'))];
  expect(rack.needs?.amount.value).toBeCloseTo(0.07, 9);
  expect([rack.verdict, follow.verdict]).toEqual(['tight', 'good']);
  expect(follow.use).toBeCloseTo((rack.use ?? 0) / 2, 9);
});

test('a focuser in front breathes by how far it stands ahead of the pupil', () => {
  const answer = askOne(breathing, tinyShoot());
  // Behind the front of the block: recess 70 − 55 − 4, the pupil 55 + 4 + 30 farther; the focuser half its length ahead.
  const pupilToFocuser = 11 + 89 + 26;
  const [near, far] = [1500, 2400].map((mm) => mm - (18 + 62 + 70 + 26));
  expect(answer.needs?.amount.value).toBeCloseTo(1 - (1 - pupilToFocuser / (near ?? 0)) / (1 - pupilToFocuser / (far ?? 0)), 9);
});

test('a subject that stays does not breathe', () => {
  expect(askAll(breathing, bare({}, [2000, 2000]))).toEqual([]);
});
