import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { sharp } from './sharp.ts';

/** The anamorphic camera aperture of SMPTE, 18.6 mm high at 2.37:1, for 1716 lines: what 35 mm cine shoots. */
const cine = (more: (draft: Draft) => void = () => undefined) =>
  tinyShoot((draft: Draft) => {
    Object.assign(draft.kit.parts.body.body.modes['open-gate'], { widthPx: 4068, heightPx: 3432, sensorWidthMm: 22, sensorHeightMm: 18.6 });
    draft.kit.parts['block-1-5'].block.squeeze = 2;
    draft.needs.delivery = { aspect: 2.37, widthPx: 4068 };
    more(draft);
  });

test('from the delivery’s lines it comes out beside what handbooks use for 35 mm cine, 0.025 mm', () => {
  const { verdict, says, has } = askOne(sharp, cine());
  expect(verdict).toBe('good');
  expect(says).toContain('from the delivery’s lines');
  expect(has?.amount.value).toBeGreaterThan(0.018);
  expect(has?.amount.value).toBeLessThan(0.029); // a 1/1500 of the diagonal of 36 × 24 mm, Ray
});

test('what the delivery states comes before the lines, what the shot states before both', () => {
  const answers = askAll(sharp, cine((draft) => {
    draft.needs.delivery.circleOfConfusionMm = 0.025;
    draft.shots.portrait.circleOfConfusionMm = 0.03;
  }));
  expect(answers.map(({ has }) => [has?.amount.value, has?.from])).toEqual([[0.025, 'stated by the delivery'], [0.03, 'stated by the shot']]);
});

test('finer than two recorded lines cannot be recorded', () => {
  const answer = askOne(sharp, cine((draft) => (draft.needs.delivery.circleOfConfusionMm = 0.008)));
  expect(answer.verdict).toBe('fails');
  expect(answer.use).toBeCloseTo((2 * 18.6) / 3432 / 0.008, 9);
});
