import { printNumber } from '../../units/print.ts';
import { NoAnswer } from '../calculator.ts';

/**
 * Distance from a thin lens to the plane in focus, in mm: u = (D + √(D² − 4fD))/2, where D = u + v is counted from the
 * sensor plane. Throws `NoAnswer` below D = 4f, where no real image forms.
 */
export function objectDistanceFromSensor(focalLengthMm: number, focusDistanceMm: number, path = 'focusDistanceMm'): number {
  return (focusDistanceMm * (1 + rootAt(focalLengthMm, focusDistanceMm, path))) / 2;
}

/** Distance from the lens to the sensor, v = D − u, without the loss of digits of that difference at long distances. */
export function imageDistanceFromSensor(focalLengthMm: number, focusDistanceMm: number, path = 'focusDistanceMm'): number {
  return (2 * focalLengthMm) / (1 + rootAt(focalLengthMm, focusDistanceMm, path));
}

/** Size on the sensor over size in the field, m = v/u. */
export function magnificationAt(focalLengthMm: number, focusDistanceMm: number, path = 'focusDistanceMm'): number {
  return (4 * focalLengthMm) / focusDistanceMm / (1 + rootAt(focalLengthMm, focusDistanceMm, path)) ** 2;
}

const ROUNDING = 2 ** -50; // at exactly four focal lengths a sum may fall a hair short

/** √(1 − 4f/D), which is (u − v)/D. */
function rootAt(focalLengthMm: number, focusDistanceMm: number, path: string): number {
  const inside = 1 - (4 * focalLengthMm) / focusDistanceMm;
  if (inside < -ROUNDING) {
    const least = `${printNumber(4 * focalLengthMm, 6)} mm (four focal lengths)`;
    throw new NoAnswer(path, `Found ${printNumber(focusDistanceMm, 6)} mm from the sensor plane; a thin lens needs at least ${least}.`);
  }
  return Math.sqrt(Math.max(0, inside));
}

/** Throws `NoAnswer` where a distance from the lens lies within one focal length: no real image forms behind the lens. */
export function needsBeyondFocalLength(focalLengthMm: number, distanceMm: number, path: string): void {
  if (distanceMm > focalLengthMm) return;
  const more = `${printNumber(focalLengthMm, 6)} mm (one focal length)`;
  throw new NoAnswer(path, `Found ${printNumber(distanceMm, 6)} mm from the lens; it can only focus on more than ${more}.`);
}

/** Distance ahead of a thing that stands before the sensor plane. Throws `NoAnswer` where that is nothing or less. */
export function distanceAheadOf(thing: string, { toSensorMm, distanceMm }: { toSensorMm: number; distanceMm: number }, path: string): number {
  if (distanceMm > toSensorMm) return distanceMm - toSensorMm;
  const there = `${printNumber(toSensorMm, 6)} mm, where the ${thing} stands`;
  throw new NoAnswer(path, `Found ${printNumber(distanceMm, 6)} mm from the sensor plane; it must be more than ${there}.`);
}
