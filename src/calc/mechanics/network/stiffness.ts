import { Envelope } from '../linear/Envelope.ts';
import { length, minus } from '../vector.ts';
import type { Element } from './element.ts';
import { type End, endsOf } from './ends.ts';
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
  const { groups, groupOf, neighbours } = frame.grouping;
  const first = Int32Array.from({ length: groups.length * 6 }, (_, row) => 6 * Math.min(Math.floor(row / 6), ...neighbours[Math.floor(row / 6)]!));
  const matrix = new Envelope(first);
  for (const element of elementsOf(frame)) {
    if (groupOf[element.a] !== groupOf[element.b]) addElement(matrix, element, endsOf(frame, element));
  }
  return { matrix, leastDiagonal: leastDiagonals(matrix, extent(frame)) };
}

function addElement(matrix: Envelope, element: Element, ends: readonly (End | undefined)[]): void {
  for (const [i, rowEnd] of ends.entries()) {
    for (const [j, columnEnd] of ends.entries()) {
      if (rowEnd === undefined || columnEnd === undefined || columnEnd.group > rowEnd.group) continue;
      addBlock(matrix, rowEnd.group * 6, columnEnd.group * 6, block(element.stiffness, i, j, rowEnd.follow, columnEnd.follow));
    }
  }
}

/** Adds a 6 × 6 block; of one on the diagonal, only its lower triangle. */
function addBlock(matrix: Envelope, row: number, column: number, entries: Float64Array): void {
  for (let p = 0; p < 6; p++) {
    const last = row === column ? p : 5;
    for (let q = 0; q <= last; q++) matrix.add(row + p, column + q, entries[p * 6 + q]!);
  }
}

/** followᵀ · k · follow for one pair of ends. */
function block(stiffness: Float64Array, i: number, j: number, rowFollow: Float64Array, columnFollow: Float64Array): Float64Array {
  const half = new Float64Array(36);
  for (let p = 0; p < 6; p++) {
    for (let q = 0; q < 6; q++) {
      const k = stiffness[(i * 6 + p) * 12 + j * 6 + q]!;
      if (k === 0) continue;
      for (let c = 0; c < 6; c++) half[p * 6 + c]! += k * columnFollow[q * 6 + c]!;
    }
  }
  const whole = new Float64Array(36);
  for (let p = 0; p < 6; p++) {
    for (let r = 0; r < 6; r++) {
      const f = rowFollow[p * 6 + r]!;
      if (f === 0) continue;
      for (let c = 0; c < 6; c++) whole[r * 6 + c]! += f * half[p * 6 + c]!;
    }
  }
  return whole;
}

/** How far apart the places of a network lie, in metres: what turns its turns into shifts. */
export function extent(frame: Frame): number {
  const places = [...frame.centres, ...elementsOf(frame).flatMap(({ placeA, placeB }) => [placeA, placeB])];
  const reach = Math.max(...places.map((place) => length(minus(place, places[0]!))));
  return reach > 0 ? reach : 1;
}

function leastDiagonals(matrix: Envelope, size: number): Float64Array {
  const least = new Float64Array(matrix.size);
  for (let row = 0; row < matrix.size; row += 6) {
    let shift = 0;
    for (let k = 0; k < 6; k++) shift = Math.max(shift, matrix.at(row + k, row + k) / (k < 3 ? 1 : size * size));
    for (let k = 0; k < 6; k++) least[row + k] = ROUNDING * shift * (k < 3 ? 1 : size * size);
  }
  return least;
}
