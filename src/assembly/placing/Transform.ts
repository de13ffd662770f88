/** A place and an attitude in space: x ↦ R·x + t. Rotation by rows; millimetres. */
export interface Transform {
  readonly r: Rotation;
  readonly t: Vector;
}

export type Vector = readonly [number, number, number];
export type Rotation = readonly [number, number, number, number, number, number, number, number, number];

export const IDENTITY: Transform = { r: [1, 0, 0, 0, 1, 0, 0, 0, 1], t: [0, 0, 0] };

/** First `b`, then `a`. */
export function compose(a: Transform, b: Transform): Transform {
  const t = rotate(a.r, b.t);
  return { r: multiply(a.r, b.r), t: [t[0] + a.t[0], t[1] + a.t[1], t[2] + a.t[2]] };
}

export function inverse({ r, t }: Transform): Transform {
  const back = transpose(r);
  const moved = rotate(back, t);
  return { r: back, t: [-moved[0], -moved[1], -moved[2]] };
}

/** Where a place of the part ends up. Taking vectors apart by pattern is slow in code that has not run long; these run more than all else. */
export function apply({ r, t }: Transform, v: Vector): Vector {
  const x = v[0];
  const y = v[1];
  const z = v[2];
  return [r[0] * x + r[1] * y + r[2] * z + t[0], r[3] * x + r[4] * y + r[5] * z + t[1], r[6] * x + r[7] * y + r[8] * z + t[2]];
}

/** Where a direction of the part points. */
export function rotate(r: Rotation, v: Vector): Vector {
  const x = v[0];
  const y = v[1];
  const z = v[2];
  return [r[0] * x + r[1] * y + r[2] * z, r[3] * x + r[4] * y + r[5] * z, r[6] * x + r[7] * y + r[8] * z];
}

export function multiply(a: Rotation, b: Rotation): Rotation {
  return [
    a[0] * b[0] + a[1] * b[3] + a[2] * b[6], a[0] * b[1] + a[1] * b[4] + a[2] * b[7], a[0] * b[2] + a[1] * b[5] + a[2] * b[8],
    a[3] * b[0] + a[4] * b[3] + a[5] * b[6], a[3] * b[1] + a[4] * b[4] + a[5] * b[7], a[3] * b[2] + a[4] * b[5] + a[5] * b[8],
    a[6] * b[0] + a[7] * b[3] + a[8] * b[6], a[6] * b[1] + a[7] * b[4] + a[8] * b[7], a[6] * b[2] + a[7] * b[5] + a[8] * b[8],
  ];
}

export const transpose = (r: Rotation): Rotation => [r[0], r[3], r[6], r[1], r[4], r[7], r[2], r[5], r[8]];

/** Axes as columns: the attitude of a frame whose x, y, z axes point along these. */
export const fromAxes = (x: Vector, y: Vector, z: Vector): Rotation => [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]];

const DEG = Math.PI / 180;

/** The axis of a frame: 0 across, 1 up, 2 out. */
export const axis = (r: Rotation, which: 0 | 1 | 2): Vector => [r[which], r[which + 3], r[which + 6]] as unknown as Vector;

/** A turn about the x axis, anticlockwise seen from its tip. */
export function turnX(deg: number): Rotation {
  const [c, s] = [Math.cos(deg * DEG), Math.sin(deg * DEG)];
  return [1, 0, 0, 0, c, -s, 0, s, c];
}

/** A turn about the z axis, anticlockwise seen from its tip. */
export function turnZ(deg: number): Rotation {
  const [c, s] = [Math.cos(deg * DEG), Math.sin(deg * DEG)];
  return [c, -s, 0, s, c, 0, 0, 0, 1];
}

/** The turn vector of a rotation, radians: its axis times its angle. Near half a turn the axis is found from the symmetric part. */
export function turnVector(r: Rotation): Vector {
  const axis: Vector = [r[7] - r[5], r[2] - r[6], r[3] - r[1]];
  const sine = length(axis) / 2;
  const cosine = (r[0] + r[4] + r[8] - 1) / 2;
  const angle = Math.atan2(sine, cosine);
  if (sine > 1e-9) return scale(axis, angle / (2 * sine));
  if (cosine > 0) return scale(axis, 0.5);
  const diagonal: Vector = [(r[0] + 1) / 2, (r[4] + 1) / 2, (r[8] + 1) / 2];
  return scale([Math.sqrt(Math.max(0, diagonal[0])), Math.sqrt(Math.max(0, diagonal[1])) * (r[1] < 0 ? -1 : 1), Math.sqrt(Math.max(0, diagonal[2])) * (r[2] < 0 ? -1 : 1)], Math.PI);
}

/** The attitude as a unit quaternion x, y, z, w: the largest component first, so that nothing is divided by little (Shepperd 1978). */
export function quaternionOf({ r }: Transform): [number, number, number, number] {
  const squares = [1 + r[0] - r[4] - r[8], 1 - r[0] + r[4] - r[8], 1 - r[0] - r[4] + r[8], 1 + r[0] + r[4] + r[8]];
  const largest = squares.indexOf(Math.max(...squares));
  const size = Math.sqrt(squares[largest] ?? 1);
  const [xy, xz, yz] = [r[1] + r[3], r[2] + r[6], r[5] + r[7]];
  const [wx, wy, wz] = [r[7] - r[5], r[2] - r[6], r[3] - r[1]];
  const by = 1 / (2 * size);
  if (largest === 0) return [size / 2, xy * by, xz * by, wx * by];
  if (largest === 1) return [xy * by, size / 2, yz * by, wy * by];
  return largest === 2 ? [xz * by, yz * by, size / 2, wz * by] : [wx * by, wy * by, wz * by, size / 2];
}

export const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const subtract = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
/** A plain root: `Math.hypot` minds sizes near the end of all numbers, at ten times the cost. */
export const length = (a: Vector): number => Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
/** A vector of length one along `a`; `fallback` where `a` has no direction. */
export function unit(a: Vector, fallback: Vector): Vector {
  const size = length(a);
  return size < 1e-12 ? fallback : scale(a, 1 / size);
}
