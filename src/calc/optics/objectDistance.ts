import { NoAnswer } from '../calculator.ts';

/**
 * Distance from a thin lens to the plane in focus, in mm: u = (D + √(D² − 4fD))/2, where D = u + v is counted from the
 * sensor plane. Throws `NoAnswer` below D = 4f, where no real image forms.
 */
export function objectDistanceFromSensor(focalLengthMm: number, focusDistanceMm: number): number {
  if (focusDistanceMm === Infinity) return Infinity;
  const discriminant = focusDistanceMm * focusDistanceMm - 4 * focalLengthMm * focusDistanceMm;
  if (discriminant < 0) {
    const least = `${4 * focalLengthMm} mm (four focal lengths)`;
    throw new NoAnswer('focusDistanceMm', `Found ${focusDistanceMm} mm from the sensor plane; a thin lens needs at least ${least}.`);
  }
  return (focusDistanceMm + Math.sqrt(discriminant)) / 2;
}
