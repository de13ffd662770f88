import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { coverage } from './coverage.ts';

/** 36 × 24 mm, whose diagonal is 43.27 mm (common practice), at 2.25:1 once widened by 1.5. */
const circle = (imageCircleMm: number, more: (draft: Draft) => void = () => undefined) => tinyShoot((draft: Draft) => {
  Object.assign(draft.kit.parts.body.body.modes['open-gate'], { sensorWidthMm: 36, sensorHeightMm: 24 });
  draft.kit.parts['taking-58'].lens.imageCircleMm = imageCircleMm;
  more(draft);
});

// The frame of 2.39:1 takes 36 × 22.59 mm of it, a diagonal of 42.50 mm.
test.each([[50, 'good'], [43.4, 'tight'], [43, 'tight'], [42, 'fails']] as const)('a circle of %f mm: %s', (mm, verdict) => {
  const answer = askOne(coverage, circle(mm));
  expect(answer.verdict).toBe(verdict);
  expect(answer.use).toBeCloseTo(43.2666 / mm, 5);
});

test('a smaller mode of the body is the mend, with its use', () => {
  const answer = askOne(coverage, circle(30, (draft) => {
    const { modes } = draft.kit.parts.body.body;
    modes.small = { ...modes['open-gate'], name: 'small', sensorWidthMm: 24, sensorHeightMm: 16 };
  }));
  expect(answer.mends).toMatchObject([{ use: expect.closeTo(28.844 / 30, 3) as number, edit: { patches: [{ value: 'small' }] } }]);
});

test('a glass without a lens in its stack is asked for one, and does not fall silent', () => {
  const answer = askOne(coverage, circle(43, (draft) => {
    draft.glasses.normal.stack = ['block', 'focuser'];
  }));
  expect(answer).toMatchObject({ verdict: 'unknown', unknown: 'not entered', says: expect.stringContaining('the lens in the stack of 58 mm behind the block') as string });
});
