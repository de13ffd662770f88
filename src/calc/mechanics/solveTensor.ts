import { type Tensor, type Vector, cross, dot, plus, times } from './vector.ts';

/** The vector that an inertia takes to another, by Cramer's rule; `undefined` where some axis has no inertia. */
export function solveTensor([a, b, c]: Tensor, image: Vector): Vector | undefined {
  const volume = dot(a, cross(b, c));
  if (!(volume > 1e-15 * (a[0] + b[1] + c[2]) ** 3)) return undefined;
  // The inverse of a matrix of rows has the cross products of the rows as columns.
  return times(plus(plus(times(cross(b, c), image[0]), times(cross(c, a), image[1])), times(cross(a, b), image[2])), 1 / volume);
}
