import { focusScale } from '../focusScale.ts';
import type { PullGiven } from './given.ts';

const CELLS = 4096; // of each table; straight lines between them err by about 1e-8 of the throw

/**
 * The ring scale as two fine tables, for speed: ring angle over 1/distance (from the sensor plane), and its inverse. The
 * inverse runs the same straight pieces backwards, so that a ring set on a subject is in focus to the last digits.
 */
export interface RingScale {
  readonly lowDeg: number;
  readonly highDeg: number;
  /** 1/mm of the farthest mark (0 at infinity) and of the nearest. */
  readonly far: number;
  readonly near: number;
  readonly angleDeg: Float64Array;
  /** 1/mm at even angles from low to high. */
  readonly vergence: Float64Array;
}

/** Throws `NoAnswer` where the marks do not make a scale. */
export function ringScale(marks: PullGiven['scale']): RingScale {
  const { curve } = focusScale(marks, 'scale');
  const { first: far, last: near } = curve;
  const angleDeg = new Float64Array(CELLS + 1);
  for (let i = 0; i <= CELLS; i++) angleDeg[i] = curve.evaluate(i === CELLS ? near : far + ((near - far) * i) / CELLS);
  const lowDeg = Math.min(angleDeg[0]!, angleDeg[CELLS]!);
  const highDeg = Math.max(angleDeg[0]!, angleDeg[CELLS]!);
  return { lowDeg, highDeg, far, near, angleDeg, vergence: inverse(angleDeg, far, near, lowDeg, highDeg) };
}

/** Ring angle that focuses at 1/mm; beyond the outermost marks the ring is at its stop. */
export function angleOfVergence({ far, near, angleDeg }: RingScale, vergence: number): number {
  return lookUp(angleDeg, (vergence - far) / (near - far));
}

/** Ring angle for a distance from the sensor plane; what is nearer than nothing counts as nearest. */
export const angleOfDistance = (scale: RingScale, distanceMm: number): number =>
  angleOfVergence(scale, distanceMm > 0 ? 1 / distanceMm : scale.near);

/** Distance in focus, from the sensor plane. */
export const distanceOfAngle = (scale: RingScale, angleDeg: number): number => 1 / vergenceOfAngle(scale, angleDeg);

function vergenceOfAngle({ lowDeg, highDeg, vergence }: RingScale, angleDeg: number): number {
  return lookUp(vergence, (angleDeg - lowDeg) / (highDeg - lowDeg));
}

/** A table at a share of its length, straight between its entries, level beyond its ends. */
export function lookUp(table: Float64Array, share: number): number {
  const cells = table.length - 1;
  const at = share * cells;
  if (!(at > 0)) return table[0]!;
  if (at >= cells) return table[cells]!;
  const cell = at | 0;
  const before = table[cell]!;
  return before + (table[cell + 1]! - before) * (at - cell);
}

function inverse(angleDeg: Float64Array, far: number, near: number, lowDeg: number, highDeg: number): Float64Array {
  const table = new Float64Array(CELLS + 1);
  const rising = angleDeg[CELLS]! > angleDeg[0]!;
  const cellWidth = (near - far) / CELLS;
  let cell = 0;
  for (let i = 0; i <= CELLS; i++) {
    const angle = rising ? lowDeg + ((highDeg - lowDeg) * i) / CELLS : highDeg - ((highDeg - lowDeg) * i) / CELLS;
    while (cell < CELLS - 1 && (rising ? angleDeg[cell + 1]! < angle : angleDeg[cell + 1]! > angle)) cell += 1;
    const width = angleDeg[cell + 1]! - angleDeg[cell]!;
    const part = width === 0 ? 0 : Math.min(1, Math.max(0, (angle - angleDeg[cell]!) / width));
    table[rising ? i : CELLS - i] = far + (cell + part) * cellWidth;
  }
  return table;
}
