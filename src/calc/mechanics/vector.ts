/** Vectors and tensors in space: +X camera left, +Y up, +Z towards the subject. Plain triples, so that they go through JSON as they are. */
export type Vector = readonly [number, number, number];
/** Three rows. */
export type Tensor = readonly [Vector, Vector, Vector];

export const ZERO: Vector = [0, 0, 0];
export const UNIT_AXES: Tensor = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];

export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (a: Vector, factor: number): Vector => [a[0] * factor, a[1] * factor, a[2] * factor];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
/** A plain root: `Math.hypot` minds sizes near the end of all numbers, at ten times the cost. */
export const length = (a: Vector): number => Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
/** Components of a vector along three axes, given as rows. */
export const along = (axes: Tensor, a: Vector): Vector => [dot(axes[0], a), dot(axes[1], a), dot(axes[2], a)];
/** The vector whose components along three axes, given as rows, these are. */
export const outOf = (axes: Tensor, a: Vector): Vector => plus(plus(times(axes[0], a[0]), times(axes[1], a[1])), times(axes[2], a[2]));

/** The three axes made exactly square and of length one, keeping the first and the plane of the first two; `undefined` where they are far from it. */
export function squared(axes: Tensor, within: number): Tensor | undefined {
  const x = axes[0];
  const y = axes[1];
  const z = axes[2];
  const apart = (skew: number): boolean => !(Math.abs(skew) <= within);
  if (apart(length(x) - 1) || apart(length(y) - 1) || apart(length(z) - 1) || apart(dot(x, y)) || apart(dot(y, z)) || apart(dot(z, x))) return undefined;
  const first = times(x, 1 / length(x));
  const across = minus(y, times(first, dot(first, y)));
  const second = times(across, 1 / length(across));
  const third = cross(first, second);
  return [first, second, dot(third, z) < 0 ? times(third, -1) : third];
}
