import { type Vector, cross, dot, length, minus, plus, times } from '../vector.ts';
import type { Frame } from './Frame.ts';
import { Motion } from './Motion.ts';

/** Bodies that nothing holds, and the ways they move together. */
export interface FreeMotion {
  readonly bodies: readonly string[];
  /** In how many ways, 1 to 6. */
  readonly ways: number;
  /** The way, where there is only one: a slide or a turn. */
  readonly says: string;
}

/** A body that moves less than this share of the most mobile one only trembles from rounding. */
const STILL = 1e-6;

/** Puts names to the vectors that met no resistance, one finding for each set of bodies. */
export function namedMotions(frame: Frame, vectors: readonly Float64Array[], size: number): FreeMotion[] {
  const bySet = new Map<string, { bodies: number[]; motions: Motion[] }>();
  for (const vector of vectors) {
    const motion = new Motion(frame, vector);
    const moves = motion.bodies().map(({ shiftMm, turnDeg }) => length(shiftMm) * 1e-3 + (length(turnDeg) * Math.PI * size) / 180);
    const most = Math.max(...moves);
    const bodies = moves.flatMap((amount, i) => (amount > STILL * most ? [i] : []));
    const found = bySet.get(bodies.join());
    if (found === undefined) bySet.set(bodies.join(), { bodies, motions: [motion] });
    else found.motions.push(motion);
  }
  return [...bySet.values()].map(({ bodies, motions }) => ({
    bodies: bodies.map((i) => frame.names[i]!),
    ways: motions.length,
    says: motions.length === 1 ? wayOf(frame, motions[0]!, bodies, size) : `in ${motions.length} ways`,
  }));
}

/** One motion in words, as its most mobile body makes it. */
function wayOf(frame: Frame, motion: Motion, bodies: readonly number[], size: number): string {
  const all = motion.bodies();
  const moves = (i: number) => length(all[i]!.shiftMm) + length(all[i]!.turnDeg);
  const most = bodies.reduce((best, i) => (moves(i) > moves(best) ? i : best));
  const { shiftMm, turnDeg } = all[most]!;
  const turn = times(turnDeg, Math.PI / 180);
  const squared = dot(turn, turn);
  if (Math.sqrt(squared) * size * 1e3 < 1e-4 * length(shiftMm)) return `sliding along ${written(times(shiftMm, 1 / length(shiftMm)), 2)}`;
  const pivotMm = plus(times(frame.centres[most]!, 1e3), times(cross(turn, shiftMm), 1 / squared));
  const axis = times(turn, 1 / Math.sqrt(squared));
  // The pivot line has no beginning; name its point nearest the origin.
  const nearest = minus(pivotMm, times(axis, dot(axis, pivotMm)));
  return `turning about the axis ${written(axis, 2)} through ${written(nearest, 1)} mm`;
}

function written(vector: Vector, decimals: number): string {
  return `(${vector.map((value) => String(Number(value.toFixed(decimals)) + 0)).join(', ')})`;
}

/** All of it in one sentence, for people. */
export function freeMotionText(found: readonly FreeMotion[]): string {
  const parts = found.map(({ bodies, says }) => `${bodies.map((name) => `"${name}"`).join(', ')} (${says})`);
  return `Nothing holds ${parts.join('; ')}. Every body must be held in six ways, directly or through others, by something fixed.`;
}
