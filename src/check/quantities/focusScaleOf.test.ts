import { describe, expect, test } from 'vitest';
import { FOCUSER_TO_SENSOR_MM, drivenShoot } from '../../../test/drivenShoot.ts';
import { NoAnswer } from '../../calc/calculator.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import { focusScaleOf } from './focusScaleOf.ts';

const scaleWith = (change: (draft: { focuser: Record<string, unknown>; taking: Record<string, unknown>; stack: string[] }) => void) =>
  focusScaleOf(
    new Asking(new Ledger(drivenShoot((draft) => change({ focuser: draft.kit.parts.focuser.focus, taking: draft.kit.parts['taking-58'].focus, stack: draft.glasses.normal.stack })))),
    { setup: 'sticks', glass: 'normal' },
  );
const lensAlone = (focus: object) => scaleWith(({ taking, stack }) => (stack.splice(1), Object.assign(taking, focus)));

describe('where a scale comes from', () => {
  test('marks, in any order, from the sensor plane', () => {
    const scale = scaleWith(({ focuser }) => Object.assign(focuser, { marks: [{ distanceMm: 1000, angleDeg: 270 }, { distanceMm: 'infinity', angleDeg: 0 }] }));
    expect(scale).toMatchObject({ from: 'marks', throwDeg: 270 });
    expect(scale.angleAt(2000)).toBeCloseTo(135, 9);
  });

  test('marks counted from the front lie further from the sensor by all that stands behind it: 18 + 62 + 70 + 52 mm', () => {
    const scale = scaleWith(({ focuser }) => Object.assign(focuser, { datum: 'front' }));
    expect(scale.angleAt(1000 + 202)).toBeCloseTo(270, 9);
  });

  test('the lead of a helicoid: a 58 mm lens at 0.5 m runs out f²/(s − f), s from the thin-lens equation', () => {
    const scale = lensAlone({ leadMm: 20, closeMm: 400 });
    const s = (500 + Math.sqrt(500 * 500 - 4 * 58 * 500)) / 2;
    expect(scale.from).toBe('helicoid');
    expect(scale.angleAt(500)).toBeCloseTo((360 * (58 * 58)) / (s - 58) / 20, 1);
  });

  test('two ends alone: a lens runs as a helicoid, a ring in front as its power grows, and both end where they are said to', () => {
    const lens = lensAlone({ closeMm: 600, throwDeg: 180 });
    const extension = (distance: number) => (58 * 58) / ((distance + Math.sqrt(distance * distance - 4 * 58 * distance)) / 2 - 58);
    expect(lens).toMatchObject({ from: 'ends' });
    expect(lens.angleAt(1500)).toBeCloseTo((180 * extension(1500)) / extension(600), 1);
    const front = scaleWith(({ focuser }) => Object.assign(focuser, { marks: undefined }));
    expect(front.angleAt(2000)).toBeCloseTo((270 * (1000 - FOCUSER_TO_SENSOR_MM)) / (2000 - FOCUSER_TO_SENSOR_MM), 1);
    expect(front.angleAt(1000)).toBeCloseTo(270, 9);
  });

  test('crossed marks, one mark twice, a throw of zero: told with their place', () => {
    const crossed = [{ distanceMm: 'infinity', angleDeg: 0 }, { distanceMm: 3000, angleDeg: 90 }, { distanceMm: 1000, angleDeg: 60 }];
    const twice = [{ distanceMm: 1000, angleDeg: 0 }, { distanceMm: 1000, angleDeg: 60 }];
    const still = [{ distanceMm: 'infinity', angleDeg: 10 }, { distanceMm: 1000, angleDeg: 10 }];
    for (const marks of [crossed, twice, still]) {
      expect(() => scaleWith(({ focuser }) => Object.assign(focuser, { marks }))).toThrow(NoAnswer);
    }
  });

  test('nothing to make one of is named, with how to measure it', () => {
    expect(() => scaleWith(({ focuser }) => Object.assign(focuser, { marks: undefined, throwDeg: undefined }))).toThrow(NotEntered);
  });
});
