import { Envelope } from '../linear/Envelope.ts';
import type { Vector } from '../vector.ts';
import type { Element } from './element.ts';
import { followEnd } from './ends.ts';
import { type Frame, elementsOf } from './Frame.ts';

/** The stiffness of all groups together: unknown k of group g is row 6·g + k. */
export interface StiffnessMatrix {
  readonly matrix: Envelope;
  /** Least diagonal that is stiffness and not rounding. */
  readonly leastDiagonal: Float64Array;
}

/** Share of a group's largest stiffness below which a diagonal comes from rounding of places and axes. */
const ROUNDING = 1e-14;

export function stiffnessMatrix(frame: Frame): StiffnessMatrix {
  const matrix = new Envelope(firstColumns(frame));
  for (const element of elementsOf(frame)) addElement(matrix, frame, element);
  return { matrix, leastDiagonal: leastDiagonals(matrix, extent(frame)) };
}

/** Of each row, the first column that anything joins to it. */
function firstColumns({ grouping: { neighbours } }: Frame): Int32Array {
  const first = new Int32Array(neighbours.length * 6);
  for (let group = 0; group < neighbours.length; group++) {
    let least = group;
    for (const other of neighbours[group]!) least = Math.min(least, other);
    first.fill(6 * least, group * 6, group * 6 + 6);
  }
  return first;
}

/** Kept for all elements of all networks: one is added at a time. */
const FOLLOW_A = new Float64Array(36);
const FOLLOW_B = new Float64Array(36);
const HALF = new Float64Array(36);

function addElement(matrix: Envelope, frame: Frame, element: Element): void {
  const a = followEnd(frame, element, element.a, element.placeA, FOLLOW_A);
  const b = followEnd(frame, element, element.b, element.placeB, FOLLOW_B);
  if (a === b) return;
  if (a >= 0) addBlock(matrix, a * 6, FOLLOW_A, a * 6, halfOf(element, 0, 0, FOLLOW_A));
  if (b >= 0) addBlock(matrix, b * 6, FOLLOW_B, b * 6, halfOf(element, 1, 1, FOLLOW_B));
  if (a < 0 || b < 0) return;
  if (b < a) addBlock(matrix, a * 6, FOLLOW_A, b * 6, halfOf(element, 0, 1, FOLLOW_B));
  else addBlock(matrix, b * 6, FOLLOW_B, a * 6, halfOf(element, 1, 0, FOLLOW_A));
}

/** k · follow: what the ends push with, on the side `i`, for each unknown of the body on the side `j`. */
function halfOf(element: Element, i: 0 | 1, j: 0 | 1, follow: Float64Array): Float64Array {
  if (element.ways === undefined) return beamHalf(element.stiffness, i, j, follow);
  for (let p = 0; p < 6; p++) {
    const k = i === j ? element.ways[p]! : -element.ways[p]!;
    for (let c = 0; c < 6; c++) HALF[p * 6 + c] = k * follow[p * 6 + c]!;
  }
  return HALF;
}

function beamHalf(stiffness: Float64Array, i: 0 | 1, j: 0 | 1, follow: Float64Array): Float64Array {
  HALF.fill(0);
  for (let p = 0; p < 6; p++) {
    for (let q = 0; q < 6; q++) {
      const k = stiffness[(i * 6 + p) * 12 + j * 6 + q]!;
      if (k === 0) continue;
      for (let c = 0; c < 6; c++) HALF[p * 6 + c]! += k * follow[q * 6 + c]!;
    }
  }
  return HALF;
}

/** Adds followᵀ · half, a 6 × 6 block; of one on the diagonal, only its lower triangle. */
function addBlock({ values, offset }: Envelope, row: number, follow: Float64Array, column: number, half: Float64Array): void {
  for (let r = 0; r < 6; r++) {
    const at = offset[row + r]! + column;
    const last = row === column ? r : 5;
    // The turns of an end do not hang on the shifts of its body.
    const ways = r < 3 ? 3 : 6;
    for (let c = 0; c <= last; c++) {
      let sum = 0;
      for (let p = 0; p < ways; p++) sum += follow[p * 6 + r]! * half[p * 6 + c]!;
      values[at + c]! += sum;
    }
  }
}

/** How far apart the places of a network lie, in metres: what turns its turns into shifts. */
export function extent({ centres, springs, beams }: Frame): number {
  const [x, y, z] = centres[0]!;
  let most = 0;
  const reach = (place: Vector): void => {
    most = Math.max(most, (place[0] - x) ** 2 + (place[1] - y) ** 2 + (place[2] - z) ** 2);
  };
  for (const centre of centres) reach(centre);
  for (const spring of springs) if (spring !== undefined) reach(spring.placeA);
  for (const { placeA, placeB } of beams) {
    reach(placeA);
    reach(placeB);
  }
  return most > 0 ? Math.sqrt(most) : 1;
}

function leastDiagonals(matrix: Envelope, size: number): Float64Array {
  const least = new Float64Array(matrix.size);
  const squared = size * size;
  for (let row = 0; row < matrix.size; row += 6) {
    let shift = 0;
    for (let k = 0; k < 6; k++) shift = Math.max(shift, matrix.diagonal(row + k) / (k < 3 ? 1 : squared));
    for (let k = 0; k < 6; k++) least[row + k] = ROUNDING * shift * (k < 3 ? 1 : squared);
  }
  return least;
}
