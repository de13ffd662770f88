import { type Vector, cross, dot, scale, subtract } from '../placing/Transform.ts';

/** Whether two convex bodies, given by their corners, share any place: Gilbert, Johnson and Keerthi 1988, in the form that only asks yes or no. */
export function convexOverlap(a: readonly Vector[], b: readonly Vector[]): boolean {
  const support = (direction: Vector): Vector => subtract(farthest(a, direction), farthest(b, scale(direction, -1)));
  let direction: Vector = subtract(a[0] ?? [0, 0, 0], b[0] ?? [1, 0, 0]);
  if (isZero(direction)) direction = [1, 0, 0];
  let simplex: Vector[] = [support(direction)];
  direction = scale(simplex[0] as Vector, -1);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    if (isZero(direction)) return true;
    const corner = support(direction);
    if (dot(corner, direction) < 0) return false;
    simplex = [corner, ...simplex];
    const next = towardsOrigin(simplex);
    if (next === undefined) return true;
    [simplex, direction] = next;
  }
  // Only bodies that just touch keep it going so long.
  return false;
}

const MOST_STEPS = 48;
const isZero = ([x, y, z]: Vector): boolean => Math.abs(x) + Math.abs(y) + Math.abs(z) < 1e-12;

function farthest(corners: readonly Vector[], direction: Vector): Vector {
  let best = corners[0] as Vector;
  let most = dot(best, direction);
  for (const corner of corners) {
    const reach = dot(corner, direction);
    if (reach > most) [best, most] = [corner, reach];
  }
  return best;
}

type Simplex = [simplex: Vector[], direction: Vector];

/** The part of the simplex nearest the origin and the way from it to the origin; `undefined` where the origin is inside. */
function towardsOrigin(simplex: Vector[]): Simplex | undefined {
  const [a, b, c, d] = simplex as [Vector, Vector, Vector, Vector];
  if (simplex.length === 2) return line(a, b);
  return simplex.length === 3 ? triangle(a, b, c) : tetrahedron(a, b, c, d);
}

function line(a: Vector, b: Vector): Simplex {
  const [ab, ao] = [subtract(b, a), scale(a, -1)];
  return dot(ab, ao) > 0 ? [[a, b], cross(cross(ab, ao), ab)] : [[a], ao];
}

function triangle(a: Vector, b: Vector, c: Vector): Simplex {
  const [ab, ac, ao] = [subtract(b, a), subtract(c, a), scale(a, -1)];
  const normal = cross(ab, ac);
  if (dot(cross(normal, ac), ao) > 0) return dot(ac, ao) > 0 ? [[a, c], cross(cross(ac, ao), ac)] : line(a, b);
  if (dot(cross(ab, normal), ao) > 0) return line(a, b);
  return dot(normal, ao) > 0 ? [[a, b, c], normal] : [[a, c, b], scale(normal, -1)];
}

function tetrahedron(a: Vector, b: Vector, c: Vector, d: Vector): Simplex | undefined {
  const [ab, ac, ad, ao] = [subtract(b, a), subtract(c, a), subtract(d, a), scale(a, -1)];
  if (dot(cross(ab, ac), ao) > 0) return triangle(a, b, c);
  if (dot(cross(ac, ad), ao) > 0) return triangle(a, c, d);
  return dot(cross(ad, ab), ao) > 0 ? triangle(a, d, b) : undefined;
}
