import { expect, test } from 'vitest';
import { askOne } from '../../test/ask.ts';
import { tinyShoot } from '../../test/tinyShoot.ts';
import { doubtOf } from './doubt.ts';
import { coverage } from './questions/picture/coverage.ts';

const shoot = tinyShoot((draft) => {
  draft.kit.parts['taking-58'].lens.imageCircleMm = { value: 43.3, low: 42, high: 45 };
  for (const key of ['sensorWidthMm', 'sensorHeightMm']) {
    const figure = draft.kit.parts.body.body.modes['open-gate'][key] as number;
    draft.kit.parts.body.body.modes['open-gate'][key] = { value: figure, plusMinus: 0 };
  }
});
const key = askOne(coverage, shoot).key;

test('the whisker spans the figure’s bounds, and the turning point is where circle and diagonal meet', () => {
  const diagonal = Math.hypot(35.7, 23.8);
  const doubt = doubtOf(shoot, coverage, key);
  expect(doubt?.low).toBeCloseTo(diagonal / 45, 9);
  expect(doubt?.high).toBeCloseTo(diagonal / 42, 9);
  expect(doubt?.by).toHaveLength(1);
  expect(doubt?.by[0]?.turnsAt).toBeCloseTo(diagonal, 4);
});

test('a figure without doubt has no whisker', () => {
  const sure = tinyShoot((draft) => {
    draft.kit.parts['taking-58'].lens.imageCircleMm = { value: 43.3, plusMinus: 0 };
    draft.kit.parts.body.body.modes['open-gate'].sensorWidthMm = { value: 35.7, plusMinus: 0 };
    draft.kit.parts.body.body.modes['open-gate'].sensorHeightMm = { value: 23.8, plusMinus: 0 };
  });
  const doubt = doubtOf(sure, coverage, key);
  expect(doubt?.by).toEqual([]);
  expect(doubt?.low).toBe(doubt?.high);
});
