import { objectDistanceFromSensor } from '../../optics/thinLens.ts';
import { type RingScale, lookUp } from './ringScale.ts';

/**
 * Blur on the sensor of a subject, for a ring angle: (f²/N)·|1/s − 1/d|·g, distances from the datum of the lens.
 * A lens that moves as a whole: s = (D + √(D² − 4fD))/2 from its principal plane, v = D − s behind it, g = s/(s − f).
 * A variable diopter in front, taking lens at infinity: s = D − offset from the focuser, v = offset, g = 1.
 */
export interface FocusBlur {
  readonly scale: RingScale;
  readonly focalLengthMm: number;
  /** f²/N. */
  readonly strength: number;
  /** 1/s in 1/mm at even angles from the low end of the ring to the high one. */
  readonly focus: Float64Array;
  readonly focuserToSensorMm: number | undefined;
  /** No subject comes nearer than this to the sensor: a quarter of what the nearest mark leaves before the lens. */
  readonly nearestMm: number;
}

export interface LensGiven {
  readonly focalLengthMm: number;
  readonly fNumber: number;
  readonly focuserToSensorMm?: number | undefined;
}

export function focusBlur(scale: RingScale, { focalLengthMm: f, fNumber, focuserToSensorMm }: LensGiven): FocusBlur {
  const focus = scale.vergence.map((vergence) => {
    if (vergence === 0) return 0;
    return 1 / (focuserToSensorMm === undefined ? objectDistanceFromSensor(f, 1 / vergence) : 1 / vergence - focuserToSensorMm);
  });
  const nearestMark = 1 / scale.near;
  const behind = focuserToSensorMm ?? nearestMark - objectDistanceFromSensor(f, nearestMark);
  return {
    scale, focalLengthMm: f, strength: (f * f) / fNumber, focus, focuserToSensorMm, nearestMm: behind + (nearestMark - behind) / 4,
  };
}

/** Diameter in mm for a subject at a distance from the sensor plane. */
export function blurAt(blur: FocusBlur, ringDeg: number, subjectMm: number): number {
  const { scale, focalLengthMm: f, focuserToSensorMm } = blur;
  const focus = lookUp(blur.focus, (ringDeg - scale.lowDeg) / (scale.highDeg - scale.lowDeg));
  if (focuserToSensorMm !== undefined) return blur.strength * Math.abs(focus - 1 / (subjectMm - focuserToSensorMm));
  const growth = 1 / (1 - f * focus);
  return blur.strength * Math.abs(focus - 1 / (subjectMm - f * growth)) * growth;
}
