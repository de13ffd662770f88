import { describe, expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { FOCUSER_TO_SENSOR_MM, drivenShoot } from '../../../../test/drivenShoot.ts';
import { sway } from './sway.ts';

const swaying = (swaySpread: number | undefined, more: object = {}) => drivenShoot((draft) => Object.assign(draft.shots.portrait, swaySpread === undefined ? {} : { swaySpread }, more));

describe('sway against depth', () => {
  test('the nearer side of the depth, by the form of a front focuser: 1/(1/s + cN/f²), on paper', () => {
    const s = 1500 - FOCUSER_TO_SENSOR_MM;
    const near = 1 / (1 / s + (0.03 * 2) / (58 * 58));
    expect(askOne(sway, swaying(10)).has?.amount.value).toBeCloseTo(s - near, 6);
    expect(askOne(sway, swaying(10)).use).toBeCloseTo(10 / (s - near), 6);
  });

  test('more than it fails, and stopping down mends it', () => {
    const answer = askOne(sway, swaying(60));
    expect(answer.verdict).toBe('fails');
    expect(answer.mends?.[0]).toMatchObject({ says: expect.stringContaining('Stop down') as string });
    expect(answer.mends?.[0]?.use).toBeLessThanOrEqual(1);
  });

  test('a tripod does not sway; a camera in the hands does, by an assumption that is listed', () => {
    expect(askAll(sway, swaying(undefined))).toEqual([]);
    const handheld = askOne(sway, drivenShoot((draft) => (draft.builds.camera.purpose = 'handheld')));
    expect(handheld.needs?.from).toContain('assumed');
  });
});
