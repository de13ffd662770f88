import { describe, expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { drivenShoot, FOCUSER_TO_SENSOR_MM } from '../../../../test/drivenShoot.ts';
import { exampleShoot } from '../../../../test/tinyShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { Asking } from '../../Asking.ts';
import { Checker } from '../../Checker.ts';
import { pullGiven } from '../../quantities/pullGiven.ts';
import { pull } from './pull.ts';

const FAULTLESS = ['subjectMissMm', 'tapeErrorMm', 'landOnMarkMm', 'stopErrorMm', 'timingSpreadMs', 'reactionSpreadMs', 'remnant', 'seatPlayDeg', 'ringPlayDeg', 'backlashDeg'];
const subject = { setup: 'sticks', glass: 'normal', shot: 'portrait' };
const planOf = (shoot: Parameters<typeof askAll>[1]) => pullGiven(new Asking(new Ledger(shoot)), subject, { seed: 1, trials: 10 });

/** Marks on the straight scale: the hand turns evenly between close marks. */
const byMarks = (change: (draft: { shots: { portrait: Record<string, unknown> }; assumptions: Record<string, unknown>; kit: { parts: Record<string, never> } }) => void = () => undefined) =>
  drivenShoot((draft) => {
    Object.assign(draft.shots.portrait, { method: 'marks', marksMm: [2300, 2200, 2100, 2000, 1900, 1800, 1700, 1600] });
    change(draft);
  });

describe('what must be true of any pull', () => {
  test('with nobody at fault and no play, marks within the limits of the drive are sharp throughout', () => {
    const shoot = byMarks((draft) => {
      for (const name of FAULTLESS) draft.assumptions[`focus.${name}`] = 0;
      const parts = draft.kit.parts as Record<string, { focus?: Record<string, unknown>; motor?: Record<string, unknown> }>;
      if (parts['focuser']?.focus !== undefined) parts['focuser'].focus['playDeg'] = 0;
      if (parts['motor']?.motor !== undefined) parts['motor'].motor['backlashDeg'] = 0;
    });
    expect(askOne(pull, shoot)).toMatchObject({ verdict: 'good', use: 0 });
  });

  test('the same shoot gives the same answer', () => {
    expect(askOne(pull, byMarks())).toEqual(askOne(pull, byMarks()));
  });

  test('a motor that stalls and a picture that does not arrive leave it to the questions they concern', () => {
    expect(askAll(pull, byMarks((draft) => ((draft.kit.parts as Record<string, { focus: Record<string, unknown> }>)['focuser']!.focus['ringTorqueNm'] = 3)))).toEqual([]);
    expect(askAll(pull, drivenShoot((draft) => delete draft.builds.camera.lines.picture))).toEqual([]);
  });

  test('limits stand beside it, and nobody is promised a take', () => {
    const answer = askOne(pull, byMarks());
    expect(answer.notes?.join(' ')).toContain('No published study concerns focus pulling itself');
    expect(answer.says).toContain('simulated');
    expect(answer.curve?.lines).toHaveLength(3);
  });
});

test('an interview of an hour is simulated in bounded time, with fewer takes', () => {
  const start = performance.now();
  const answer = askOne(pull, byMarks((draft) => (draft.shots.portrait['subject'] = [{ atS: 0, distanceMm: 2000 }, { atS: 3590, distanceMm: 2000 }])));
  expect(answer.verdict).not.toBe('unknown');
  expect(answer.has?.from).toMatch(/of \d\d simulated takes/);
  expect(performance.now() - start).toBeLessThan(20_000);
}, 30_000);

describe('the shoot is understood as it was meant', () => {
  test('delays, gears, steps, play and optics arrive as they add up on paper', () => {
    expect(planOf(drivenShoot())?.given).toMatchObject({
      way: 'both', pictureDelayMs: 62, linkDelayMs: 20, gearRatio: 3, handStepDeg: 0.1, fNumber: 2, focuserToSensorMm: FOCUSER_TO_SENSOR_MM, circleOfConfusionMm: 0.03,
      motorRpm: expect.closeTo(300 * (1 - 0.2 / 0.9), 9) as number, seconds: 6, swayMm: 0,
    });
  });

  test('marks listed between the ends of a move are counted, the ends themselves are not', () => {
    expect(planOf(byMarks())?.given.marksPerMove).toBe(8);
    expect(planOf(byMarks((draft) => (draft.shots.portrait['marksMm'] = [2400, 2000, 1500])))?.given.marksPerMove).toBe(1);
  });

  test('sway is stated as far as it goes either way: two of its rms', () => {
    expect(planOf(drivenShoot((draft) => (draft.shots.portrait.swaySpread = 20)))?.given.swayMm).toBe(10);
  });
});

test('the first mends with an edit, tried on a shot of the demo, lead to about the use they promise', () => {
  const shoot = exampleShoot('demo');
  const key = 'focus.pull|setup=jetty-shoulder|glass=block-58|shot=6';
  const studied = (one: typeof shoot) => new Checker(one, [pull]).study(key);
  const mends = studied(shoot)?.mends?.filter(({ edit }) => edit !== undefined).slice(0, 2) ?? [];
  expect(mends.length).toBeGreaterThan(0);
  for (const { edit, use } of mends) {
    const edited = applyEdit(shoot, edit as NonNullable<typeof edit>);
    if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
    // Promised on half as many takes.
    expect(Math.abs((studied(edited.value.shoot)?.use ?? Number.NaN) - (use ?? 0))).toBeLessThan(0.3);
  }
});
