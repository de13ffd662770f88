import * as RAPIER from '@dimforge/rapier3d-compat';
import { fc, test as property } from '@fast-check/vitest';
import { beforeAll, expect, test } from 'vitest';
import { type Transform, type Vector, turnX, turnZ, multiply } from '../placing/Transform.ts';
import type { Solid } from '../../shoot/schema/mechanics.ts';
import { convexOverlap } from './convexOverlap.ts';
import { convexParts } from './worldSolids.ts';

// Rapier, a general-purpose physics engine, stands outside: its own shapes and its own overlap test.
beforeAll(() => RAPIER.init());

const size = fc.double({ min: 5, max: 80, noNaN: true });
const placeOf = fc.record({ shift: fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -70, max: 70, noNaN: true }))), a: fc.double({ min: -180, max: 180, noNaN: true }), b: fc.double({ min: -180, max: 180, noNaN: true }) });
const solid = fc.oneof(
  fc.tuple(size, size, size).map((sizeMm): Solid => ({ shape: 'box', sizeMm })),
  fc.record({ diameterMm: size, lengthMm: size, along: fc.constantFrom('x' as const, 'y' as const, 'z' as const) }).map((one): Solid => ({ shape: 'cylinder', ...one })),
);

/** The solid's corners as a hull of the engine's own. */
const hullOf = (corners: readonly Vector[]) => RAPIER.ColliderDesc.convexHull(new Float32Array(corners.flat()))?.shape as InstanceType<typeof RAPIER.ConvexPolyhedron>;

function corners(one: Solid, { shift, a, b }: { shift: readonly number[]; a: number; b: number }, grow = 0): Vector[] {
  const place: Transform = { r: multiply(turnZ(a), turnX(b)), t: shift as unknown as Vector };
  return convexParts({ solid: one, place, travelMm: 0 } as never, grow)[0] ?? [];
}

property.prop([solid, placeOf, solid, placeOf], { numRuns: 500 })('two convex bodies overlap where a physics engine says so', (one, placeOne, other, placeOther) => {
  const [a, b] = [corners(one, placeOne), corners(other, placeOther)];
  const origin = { x: 0, y: 0, z: 0 };
  const still = { x: 0, y: 0, z: 0, w: 1 };
  const theirs = hullOf(a).intersectsShape(origin, still, hullOf(b), origin, still);
  // The engine reckons in single precision: bodies within a twentieth of a millimetre of touching may go either way.
  const nearlyTouching = convexOverlap(corners(one, placeOne, -0.05), corners(other, placeOther, -0.05)) !== convexOverlap(corners(one, placeOne, 0.05), corners(other, placeOther, 0.05));
  if (!nearlyTouching) expect(convexOverlap(a, b)).toBe(theirs);
});

test('boxes side by side, corner to corner, and one inside the other', () => {
  const box = (at: Vector, half = 1): Vector[] => [-1, 1].flatMap((i) => [-1, 1].flatMap((j) => [-1, 1].map((k): Vector => [at[0] + i * half, at[1] + j * half, at[2] + k * half])));
  expect(convexOverlap(box([0, 0, 0]), box([2.01, 0, 0]))).toBe(false);
  expect(convexOverlap(box([0, 0, 0]), box([1.99, 0, 0]))).toBe(true);
  expect(convexOverlap(box([0, 0, 0]), box([1.99, 1.99, 1.99]))).toBe(true);
  expect(convexOverlap(box([0, 0, 0]), box([0.1, 0, 0], 0.2))).toBe(true);
  expect(convexOverlap(box([0, 0, 0]), box([0, 0, 0]))).toBe(true);
});

test('a lens stands free in the bore of a tube, and not in a tube too narrow for it', () => {
  const tube = (boreMm: number) => convexParts({ solid: { shape: 'tube', diameterMm: 110, boreMm, lengthMm: 20, along: 'z' }, place: { r: [1, 0, 0, 0, 1, 0, 0, 0, 1], t: [0, 0, 0] }, travelMm: 0 } as never);
  const lens = convexParts({ solid: { shape: 'cylinder', diameterMm: 90, lengthMm: 100, along: 'z' }, place: { r: [1, 0, 0, 0, 1, 0, 0, 0, 1], t: [0, 0, 0] }, travelMm: 0 } as never)[0] ?? [];
  expect(tube(92).some((wall) => convexOverlap(wall, lens))).toBe(false);
  expect(tube(86).some((wall) => convexOverlap(wall, lens))).toBe(true);
});
