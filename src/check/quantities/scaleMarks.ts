import type { RingScale } from './focusScaleOf.ts';

/** A line of a focus scale. */
export interface ScaleMark {
  readonly distanceMm: number;
  readonly ringDeg: number;
  /** From the far end of the scale on, whichever way the ring runs. */
  readonly fromFarDeg: number;
  /** Measured there, not read off the curve. */
  readonly taped: boolean;
}

const METRES = [
  0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 10, 12, 15, 20, 30, 50,
] as const;
const INCHES = [
  12, 13, 14, 15, 16, 17, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 39, 42, 45, 48, 51, 54, 57, 60, 66, 72, 78, 84, 96, 108, 120, 144, 168, 192, 240, 300, 360, 480, 720, 1200,
] as const;
const MM_PER_INCH = 25.4;

/** The distances that a scale is engraved at, with the taped marks among them, farthest first. */
export function scaleMarks(scale: RingScale, system: 'metric' | 'imperial', distancesMm: readonly number[] = usualDistances(system)): ScaleMark[] {
  const taped = scale.from === 'marks' ? scale.marks.map(({ distanceMm }) => distanceMm) : [];
  const ends = [scale.farMm, scale.nearMm];
  const inside = distancesMm.filter((mm) => mm <= scale.farMm && mm >= scale.nearMm);
  const all = [...new Set([...inside, ...(distancesMm === usualDistances(system) ? [...taped, ...ends] : [])])];
  const far = scale.angleAt(scale.farMm);
  return all
    .toSorted((a, b) => 1 / a - 1 / b)
    .map((distanceMm) => {
      const ringDeg = scale.angleAt(distanceMm);
      return { distanceMm, ringDeg, fromFarDeg: Math.abs(ringDeg - far), taped: taped.includes(distanceMm) };
    });
}

const USUAL = { metric: METRES.map((m) => m * 1000), imperial: INCHES.map((inches) => inches * MM_PER_INCH) };

export function usualDistances(system: 'metric' | 'imperial'): readonly number[] {
  return USUAL[system];
}
