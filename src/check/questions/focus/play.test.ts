import { describe, expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { FOCUSER_TO_SENSOR_MM, drivenShoot } from '../../../../test/drivenShoot.ts';
import { play } from './play.ts';

/**
 * The turn that is still sharp, on paper: a front focuser at T2 blurs by (f²/N)·|1/s − 1/s′|, so that s′ lies c·N/f² dioptres away, and
 * the straight scale makes 270 000 deg·mm over the distance of that.
 */
function oneWayOnPaper(distanceMm: number, circleMm: number, fNumber: number): number {
  const s = distanceMm - FOCUSER_TO_SENSOR_MM;
  const off = (circleMm * fNumber) / (58 * 58);
  const angle = (vergence: number) => 270_000 / (1 / vergence + FOCUSER_TO_SENSOR_MM);
  return Math.min(Math.abs(angle(1 / s + off) - angle(1 / s)), Math.abs(angle(1 / s) - angle(1 / s - off)));
}

describe('play against depth', () => {
  test('play of the gear counts by the ratio: 0.6°/3, and 0.2° of the ring, and three seats of 0.03° assumed', () => {
    const answer = askOne(play, drivenShoot());
    expect(answer.needs?.amount.value).toBeCloseTo(0.2 + 0.2 + 0.09, 9);
  });

  test('what the ring may be off is that of the front-focuser form at the nearest of the shot', () => {
    expect(askOne(play, drivenShoot()).has?.amount.value).toBeCloseTo(oneWayOnPaper(1500, 0.03, 2), 6);
  });

  test('play entered at a seat and at the clamp takes the place of what is assumed: 0.1 mm on 48 mm are 0.119°', () => {
    const answer = askOne(play, drivenShoot((draft) => {
      draft.kit.parts['block-1-5'].points.front.playDeg = { value: 0.4, plusMinus: 0 };
      draft.kit.parts.motor.points = { clamp: { kind: 'rod clamp', class: '15 mm', playMm: { value: 0.1, plusMinus: 0 } } };
      draft.kit.parts.rod = { name: 'Rod', kind: 'rod', points: { rod: { kind: 'rod', class: '15 mm' } } };
      draft.builds.camera.pieces.rod = { of: 'rod' };
      draft.builds.camera.joints = { 'motor-clamp': { a: 'motor/clamp', b: 'rod/rod' } };
    }));
    expect(answer.needs?.amount.value).toBeCloseTo(0.4 + 0.4 + 0.06 + (0.1 / 48) * (180 / Math.PI), 6);
  });

  test('more play than depth fails, with cures that hold', () => {
    const answer = askOne(play, drivenShoot((draft) => (draft.kit.parts.focuser.focus.playDeg = { value: 4, plusMinus: 0 })));
    expect(answer.verdict).toBe('fails');
    expect(answer.mends?.filter(({ use }) => (use ?? 2) <= 1).length).toBeGreaterThan(1);
  });

  test('a shot so deep that no turn of the ring is soft is told as such; a hand on the ring does not ask', () => {
    const deep = askOne(play, drivenShoot((draft) => Object.assign(draft.shots.portrait, { tStop: 22, circleOfConfusionMm: 0.9 })));
    expect(deep).toMatchObject({ verdict: 'good', says: expect.stringContaining('wherever the ring stands') as string });
    expect(askAll(play, drivenShoot((draft) => delete draft.builds.camera.pieces.motor && delete draft.builds.camera.lines['motor-bus']))).toEqual([]);
  });
});
