import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { openings } from './openings.ts';

interface Stage { readonly aheadOfFrontMm: number; readonly widthMm: number; readonly heightMm: number; readonly holds?: string }

/** A 50 mm 2× lens at 2.39:1 on 24 × 20.08 mm, its pupils 40 and 80 mm behind the front, with a box on it. */
const boxOn = (stages: Readonly<Record<string, Stage>>, more: (draft: Draft) => void = () => undefined) => tinyShoot((draft: Draft) => {
  const { parts } = draft.kit;
  parts['taking-58'].lens = {
    ...parts['taking-58'].lens, focalLengthMm: 50, squeeze: 2,
    pupils: { horizontal: { behindFrontMm: 40, diameterMm: 10 }, vertical: { behindFrontMm: 80, diameterMm: 20 } },
  };
  Object.assign(parts.body.body.modes['open-gate'], { widthPx: 2390, heightPx: 2000, sensorWidthMm: 24, sensorHeightMm: 20 });
  parts.box = { name: 'Box', kind: 'matte box', matteBox: { fit: 'clamp', openings: stages } };
  draft.glasses.normal = { name: '2× lens', stack: ['lens'], pieces: { lens: { of: 'taking-58' }, box: { of: 'box' } } };
  more(draft);
});

test('each meridian is cleared from its own pupil: 2·d·tan + pupil', () => {
  const answer = askOne(openings, boxOn({ hood: { aheadOfFrontMm: 60, widthMm: 106, heightMm: 90 } }));
  // Across (60 + 40)·24·2/50 + 10 = 106; up and down (60 + 80)·20/50 + 20 = 76. One pupil for both would ask 150 × 76 or 106 × 60.
  expect(answer.needs?.amount.value).toBeCloseTo(106, 6);
  expect(answer.use).toBeCloseTo(1, 9);
  expect(answer.steps?.find(({ says }) => says === 'clear height needed')?.amount?.value).toBeCloseTo(76, 6);
});

test('the worst stage speaks, and how much nearer it must come is right', () => {
  const answer = askOne(openings, boxOn({
    tray: { aheadOfFrontMm: 10, widthMm: 120, heightMm: 100, holds: 'filter' },
    hood: { aheadOfFrontMm: 80, widthMm: 106, heightMm: 90 },
  }));
  expect(answer).toMatchObject({ verdict: 'fails', says: expect.stringMatching(/Opening of Box is in the picture .* at the sides/) as string });
  expect(answer.mends?.[0]?.says).toMatch(/20\s*mm nearer/);
});

test('a filter goes in either way round', () => {
  const stages = { tray: { aheadOfFrontMm: 10, widthMm: 140, heightMm: 100, holds: 'filter' } };
  const filter = (widthMm: number, heightMm: number) => boxOn(stages, (draft) => {
    draft.kit.parts.nd = { name: 'ND', kind: 'filter', filter: { kind: 'nd', widthMm, heightMm } };
    draft.glasses.normal.pieces.nd = { of: 'nd' };
  });
  expect(askOne(openings, filter(100, 140), 'camera/nd').use).toBe(askOne(openings, filter(140, 100), 'camera/nd').use);
});

test('a close-up lens too small for the corner darkens it', () => {
  const shoot = (clearMm: number) => boxOn({}, (draft) => {
    draft.kit.parts['plus-1'] = { name: 'Close-up +1', kind: 'close-up', closeUp: { powerDpt: 1, clearMm } };
    draft.shots.portrait.diopter = 'plus-1';
  });
  // The corner beam crosses it at (19.2, 16) mm, 5 and 10 mm to either side: a radius of 40 mm holds it all, one of 15 mm next to nothing.
  expect(askOne(openings, shoot(80), 'shot=')).toMatchObject({ verdict: 'good', use: 0 });
  expect(askOne(openings, shoot(30), 'shot=').verdict).toBe('fails');
});
