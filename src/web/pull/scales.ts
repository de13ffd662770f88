import type { System } from '../../units/print.ts';

/** Room of the plot: time runs across, distance up the page on a scale of its reciprocal, on which depth is even. */
export interface Scales {
  readonly width: number;
  readonly height: number;
  readonly x: (timeS: number) => number;
  readonly y: (distanceMm: number) => number;
  readonly timeAt: (x: number) => number;
  readonly distanceAt: (y: number) => number;
  readonly ticksMm: readonly number[];
}

export const LEFT = 52;
export const BOTTOM = 24;
const TOP = 12;
const ROUND: Readonly<Record<System, readonly number[]>> = {
  metric: [300, 400, 500, 600, 800, 1000, 1200, 1500, 2000, 2500, 3000, 4000, 5000, 7000, 10_000, 15_000, 20_000, 30_000, 50_000, Infinity],
  imperial: [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 150, Infinity].map((feet) => feet * 304.8),
};

export function scalesFor({ width, height, seconds, nearestMm, farthestMm, system }: { system: System; width: number; height: number; seconds: number; nearestMm: number; farthestMm: number }): Scales {
  const [near, far] = [1 / nearestMm, 1 / farthestMm];
  const room = Math.max(near - far, 1e-6);
  const [most, least] = [near + room * 0.15, Math.max(0, far - room * 0.15)];
  const x = (timeS: number) => LEFT + (timeS / seconds) * (width - LEFT - 8);
  const y = (distanceMm: number) => TOP + ((1 / distanceMm - least) / (most - least)) * (height - TOP - BOTTOM);
  const ticks = ROUND[system].filter((mm) => 1 / mm <= most && 1 / mm >= least);
  return {
    width, height, x, y, timeAt: (at) => ((at - LEFT) / (width - LEFT - 8)) * seconds,
    distanceAt: (at) => 1 / Math.max(1e-7, least + ((at - TOP) / (height - TOP - BOTTOM)) * (most - least)),
    ticksMm: apart(ticks, y),
  };
}

/** Ticks at least a line apart. */
function apart(ticks: readonly number[], y: (mm: number) => number): number[] {
  const kept: number[] = [];
  for (const tick of ticks) if (kept.length === 0 || Math.abs(y(tick) - y(kept.at(-1) ?? 0)) > 18) kept.push(tick);
  return kept;
}

/** A line through points, broken where a value is none. */
export function lineThrough(points: readonly (readonly [number, number])[]): string {
  let pen = 'M';
  return points.map(([x, y]) => {
    if (!Number.isFinite(x) || !Number.isFinite(y)) {
      pen = 'M';
      return '';
    }
    const step = `${pen}${x.toFixed(1)} ${y.toFixed(1)}`;
    pen = 'L';
    return step;
  }).join('');
}
