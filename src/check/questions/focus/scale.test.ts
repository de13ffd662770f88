import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { drivenShoot } from '../../../../test/drivenShoot.ts';
import { scale } from './scale.ts';

const withMarks = (marks: unknown, more: object = {}) => drivenShoot((draft) => Object.assign(draft.kit.parts.focuser.focus, { marks }, more));

test('marks make a scale; two ends alone make an estimate that says so and how to better it', () => {
  expect(askOne(scale, drivenShoot()).verdict).toBe('good');
  const ends = askOne(scale, withMarks(undefined));
  expect(ends).toMatchObject({ verdict: 'tight', says: expect.stringContaining('good to plan with, not to pull by') as string });
  expect(ends.mends?.[0]?.says).toContain('five marks');
});

test('marks that cross, or a throw of zero, are told with the place where they do', () => {
  const crossed = askOne(scale, withMarks([{ distanceMm: 'infinity', angleDeg: 0 }, { distanceMm: 3000, angleDeg: 200 }, { distanceMm: 1000, angleDeg: 180 }]));
  expect(crossed.verdict).toBe('fails');
  expect(crossed.says).toMatch(/3000 mm at 200°.*1000 mm at 180°/);
  expect(askOne(scale, withMarks([{ distanceMm: 'infinity', angleDeg: 5 }, { distanceMm: 1000, angleDeg: 5 }])).says).toContain('throw of zero');
});

test('a scale that ends before a shot does is told with the shot', () => {
  const short = askOne(scale, withMarks([{ distanceMm: 2000, angleDeg: 135 }, { distanceMm: 1000, angleDeg: 270 }]));
  expect(short).toMatchObject({ verdict: 'tight', says: expect.stringContaining('Portrait at the window') as string });
});

test('neither marks nor ends: not entered', () => {
  expect(askOne(scale, withMarks(undefined, { throwDeg: undefined }))).toMatchObject({ verdict: 'unknown', unknown: 'not entered' });
});
