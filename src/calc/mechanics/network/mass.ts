import { Envelope } from '../linear/Envelope.ts';
import type { Tensor } from '../vector.ts';
import type { Group } from './groups.ts';

/** The factor L of the mass matrix M = L·Lᵀ. Directions without mass have no column in it. */
export interface MassFactor {
  readonly columns: number;
  /** L times a vector: one entry for each unknown. */
  readonly spread: (x: Float64Array) => Float64Array;
  /** Lᵀ times a vector: one entry for each column. */
  readonly gather: (y: Float64Array) => Float64Array;
}

export function massFactor(groups: readonly Group[]): MassFactor {
  const columns = groups.flatMap(({ mass, inertia }, g) => [
    ...(mass > 0 ? [0, 1, 2].map((k) => ({ at: g * 6 + k, entries: [Math.sqrt(mass)] })) : []),
    ...semiCholesky(inertia).map(({ from, entries }) => ({ at: g * 6 + 3 + from, entries })),
  ]);
  const at = Int32Array.from(columns, (column) => column.at);
  const tall = Int32Array.from(columns, (column) => column.entries.length);
  const entries = new Float64Array(columns.length * 3);
  columns.forEach((column, c) => entries.set(column.entries, c * 3));
  return {
    columns: columns.length,
    spread: (x) => {
      const y = new Float64Array(groups.length * 6);
      for (let c = 0; c < at.length; c++) for (let k = 0; k < tall[c]!; k++) y[at[c]! + k]! += entries[c * 3 + k]! * x[c]!;
      return y;
    },
    gather: (y) => {
      const x = new Float64Array(at.length);
      for (let c = 0; c < at.length; c++) for (let k = 0; k < tall[c]!; k++) x[c]! += entries[c * 3 + k]! * y[at[c]! + k]!;
      return x;
    },
  };
}

/** Columns of a triangular factor of a tensor that may be flat in some directions: those columns are left out. */
function semiCholesky(tensor: Tensor): { readonly from: number; readonly entries: readonly number[] }[] {
  const rest = tensor.map((row) => [...row]);
  const trace = rest[0]![0]! + rest[1]![1]! + rest[2]![2]!;
  const columns: { from: number; entries: number[] }[] = [];
  for (let c = 0; c < 3; c++) {
    const pivot = rest[c]![c]!;
    if (!(pivot > 1e-12 * trace)) continue;
    const entries = rest.slice(c).map((row) => row[c]! / Math.sqrt(pivot));
    columns.push({ from: c, entries });
    for (let i = c; i < 3; i++) for (let j = c; j < 3; j++) rest[i]![j]! -= entries[i - c]! * entries[j - c]!;
  }
  return columns;
}

/** A stiffness matrix less s times the mass. */
export function lessMass(stiffness: Envelope, groups: readonly Group[], s: number): Envelope {
  const shifted = new Envelope(stiffness.first);
  shifted.values.set(stiffness.values);
  groups.forEach(({ mass, inertia }, g) => {
    for (let k = 0; k < 3; k++) shifted.add(g * 6 + k, g * 6 + k, -s * mass);
    inertia.forEach((row, i) => row.slice(0, i + 1).forEach((entry, j) => shifted.add(g * 6 + 3 + i, g * 6 + 3 + j, -s * entry)));
  });
  return shifted;
}
