/**
 * How far a minimum-jerk move has got: 10x³ − 15x⁴ + 6x⁵ of its way at the share x of its time. It starts and ends at rest
 * without a jolt and peaks at 1.875 times its mean speed half-way.
 * @source Flash & Hogan 1985, The coordination of arm movements, Journal of Neuroscience 5
 */
export function minimumJerk(x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  return x * x * x * (10 + x * (6 * x - 15));
}

/** Peak speed over mean speed of such a move. */
export const MINIMUM_JERK_PEAK = 1.875;
