import { describe, expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { FOCUSER_TO_SENSOR_MM, drivenShoot } from '../../../../test/drivenShoot.ts';
import { follow } from './follow.ts';

/** A steady walk pulled by eye; the picture comes 40 + 22 ms late, half a frame of 25, then the reaction, the link 20 and the motor's lag 10. */
const walk = (mps: number, change: (draft: { shots: { portrait: Record<string, unknown> }; assumptions: Record<string, unknown> }) => void = () => undefined) =>
  drivenShoot((draft) => {
    Object.assign(draft.shots.portrait, { method: 'picture', motion: 'constant', subject: [{ atS: 0, distanceMm: 5000 }, { atS: 3 / mps, distanceMm: 2000 }] });
    change(draft);
  });

describe('crossover model (McRuer & Jex 1967): a steady turn is followed 1/ωc late, ωc = (π/2 − φ)/τ', () => {
  test('the blur of a ring that stands where the subject was 1/ωc ago, on paper', () => {
    const tau = 0.04 + 0.022 + 0.02 + 0.231 + 0.02 + 0.01;
    const lag = tau / (Math.PI / 2 - Math.PI / 4);
    const mps = 0.3;
    // The scale is straight over 1/D, so the ring's speed is 270 000·v/D²; it is fastest at the nearest, a fortieth of a step before 2 m.
    const blurAt = (distanceMm: number) => {
      const ring = 270_000 / distanceMm - (270_000 * mps * 1000 * lag) / distanceMm ** 2;
      return ((58 * 58) / 2) * Math.abs(1 / (270_000 / ring - FOCUSER_TO_SENSOR_MM) - 1 / (distanceMm - FOCUSER_TO_SENSOR_MM));
    };
    const answer = askOne(follow, walk(mps));
    expect(answer.needs?.amount.value).toBeGreaterThan(blurAt(2080));
    expect(answer.needs?.amount.value).toBeLessThan(blurAt(2000));
  });

  test('slow enough it can be followed, too quick it wants marks, whatever the picture', () => {
    expect(askOne(follow, walk(0.02)).verdict).toBe('good');
    expect(askOne(follow, walk(1.4))).toMatchObject({ verdict: 'fails', says: expect.stringContaining('wants marks') as string });
  });

  test('where a sooner picture would do, it says how soon: at that delay the blur is just what counts as sharp', () => {
    const late = (delayMs: number, mps: number) => walk(mps, (draft) => ((draft as never as { kit: { parts: Record<string, { screen: { delayMs: number } }> } }).kit.parts['monitor-5']!.screen.delayMs = delayMs));
    const found = askOne(follow, late(600, 0.12));
    expect(found).toMatchObject({ verdict: 'fails', says: expect.stringContaining('picture this late') as string });
    const asLateAs = found.steps?.at(-1)?.amount?.value ?? Number.NaN;
    expect(askOne(follow, late(asLateAs - 40, 0.12)).use).toBeCloseTo(1, 3);
  });
});

test('racks, marks and still subjects are not followed by eye', () => {
  expect(askAll(follow, drivenShoot())).toEqual([]);
  expect(askAll(follow, walk(1, (draft) => (draft.shots.portrait['motion'] = 'rack')))).toEqual([]);
});

test('a puller for whom no screen is entered: that is what is missing', () => {
  const blind = askOne(follow, drivenShoot((draft) => {
    draft.needs.viewers = {};
    Object.assign(draft.shots.portrait, { method: 'picture' });
  }));
  expect(blind).toMatchObject({ unknown: 'not entered', missing: [{ path: 'needs/viewers' }] });
});
