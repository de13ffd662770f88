import { type Vector, cross, dot, scale, subtract } from '../placing/Transform.ts';

/**
 * Whether two convex bodies, given by their corners, share any place: portal refinement of the Minkowski difference (Snethen, in
 * Game Programming Gems 7, 2008). It starts from the middles of both, so that bodies on one axis, as nearly all in a camera are, give
 * it no trouble; the simplex walk of Gilbert, Johnson and Keerthi stumbled there.
 */
export function convexOverlap(a: readonly Vector[], b: readonly Vector[]): boolean {
  const support = (way: Vector): Vector => subtract(farthest(a, way, 1), farthest(b, way, -1));
  const inside = subtract(middle(a), middle(b));
  if (isZero(inside)) return true;
  const portal = firstPortal(inside, support);
  return typeof portal === 'boolean' ? portal : refine(portal, inside, support);
}

type Support = (way: Vector) => Vector;
type Portal = [Vector, Vector, Vector];

const MOST_STEPS = 64;
const EPSILON = 1e-9;
const isZero = ([x, y, z]: Vector): boolean => Math.abs(x) + Math.abs(y) + Math.abs(z) < 1e-12;

function middle(corners: readonly Vector[]): Vector {
  let [x, y, z] = [0, 0, 0];
  for (const corner of corners) {
    x += corner[0];
    y += corner[1];
    z += corner[2];
  }
  return scale([x, y, z], 1 / corners.length);
}

/** The corner that lies farthest along a way, or against it. Asked for most of all that is asked here. */
function farthest(corners: readonly Vector[], [x, y, z]: Vector, sign: 1 | -1): Vector {
  let best = corners[0] as Vector;
  let most = -Infinity;
  for (const corner of corners) {
    const reach = sign * (corner[0] * x + corner[1] * y + corner[2] * z);
    if (reach > most) {
      best = corner;
      most = reach;
    }
  }
  return best;
}

/** Three far corners through which the ray from the inside point to the origin leaves; or the answer, where it is plain already. */
function firstPortal(inside: Vector, support: Support): Portal | boolean {
  const ray = scale(inside, -1);
  let v1 = support(ray);
  if (dot(v1, ray) <= 0) return false;
  let way = cross(v1, inside);
  if (isZero(way)) return true;
  let v2 = support(way);
  if (dot(v2, way) <= 0) return false;
  way = cross(subtract(v1, inside), subtract(v2, inside));
  if (dot(way, inside) > 0) {
    [v1, v2] = [v2, v1];
    way = scale(way, -1);
  }
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const v3 = support(way);
    if (dot(v3, way) <= 0) return false;
    if (dot(cross(v1, v3), inside) < 0) v2 = v3;
    else if (dot(cross(v3, v2), inside) < 0) v1 = v3;
    else return [v1, v2, v3];
    way = cross(subtract(v1, inside), subtract(v2, inside));
  }
  return false;
}

/** Moves the portal outwards until the origin lies behind it, or beyond the surface. */
function refine([v1, v2, v3]: Portal, inside: Vector, support: Support): boolean {
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const way = cross(subtract(v2, v1), subtract(v3, v1));
    if (dot(way, v1) >= 0) return true;
    const v4 = support(way);
    const size = Math.hypot(...way);
    if (dot(v4, way) <= 0 || dot(subtract(v4, v3), way) <= EPSILON * size) return false;
    const side = cross(v4, inside);
    if (dot(side, v1) > 0) {
      if (dot(side, v2) > 0) v1 = v4;
      else v3 = v4;
    } else if (dot(side, v3) > 0) v2 = v4;
    else v1 = v4;
  }
  // Only bodies that just touch keep it going so long.
  return false;
}
