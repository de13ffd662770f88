import { mat3, quat } from 'gl-matrix';
import { fc, test as property } from '@fast-check/vitest';
import { validateBytes } from 'gltf-validator';
import { expect, test } from 'vitest';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import { type Rotation, multiply, quaternionOf, turnX, turnZ } from '../../assembly/placing/Transform.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { rigGltf, solidMesh } from './rigGltf.ts';

test('the placed rig is valid by the standard’s own validator, in metres, under its pieces’ names', async () => {
  const bytes = await rigGltf(new Ledger(riggedShoot()), 'sticks', 'normal');
  const report = (await validateBytes(bytes)) as { issues: { numErrors: number; numWarnings: number; messages: unknown[] }; info: { totalTriangleCount: number } };
  expect(report.issues.messages).toEqual([]);
  expect(report.info.totalTriangleCount).toBeGreaterThan(500);
  const json = new TextDecoder().decode(bytes);
  for (const name of ['Motor on a clamp', '58 mm taking lens', 'Variable diopter']) expect(json).toContain(name);
  expect(bytes).toEqual(await rigGltf(new Ledger(riggedShoot()), 'sticks', 'normal'));
});

property.prop([fc.double({ min: -180, max: 180, noNaN: true }), fc.double({ min: -180, max: 180, noNaN: true })])('attitudes agree with gl-matrix', (a, b) => {
  const r: Rotation = multiply(turnZ(a), turnX(b));
  const theirs = quat.fromMat3(quat.create(), mat3.fromValues(r[0], r[3], r[6], r[1], r[4], r[7], r[2], r[5], r[8]));
  const own = quaternionOf({ r, t: [0, 0, 0] });
  expect(Math.abs(own.reduce((sum, one, at) => sum + one * (theirs[at] ?? 0), 0))).toBeCloseTo(1, 5);
});

test.each([
  ['box', { shape: 'box', sizeMm: [10, 20, 30] }, 6000],
  ['cylinder', { shape: 'cylinder', diameterMm: 20, lengthMm: 10, along: 'x' }, (Math.PI * 100 * 10)],
  ['tube', { shape: 'tube', diameterMm: 20, boreMm: 10, lengthMm: 10, along: 'y' }, Math.PI * (100 - 25) * 10],
] as const)('a %s is closed and outward: its triangles enclose its volume', (_name, solid, volume) => {
  const { positions, indices } = solidMesh(solid as never);
  const at = (index: number) => positions.slice(index * 3, index * 3 + 3) as [number, number, number];
  let six = 0;
  for (let face = 0; face < indices.length; face += 3) {
    const [a, b, c] = [at(indices[face] ?? 0), at(indices[face + 1] ?? 0), at(indices[face + 2] ?? 0)];
    six += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  expect(six / 6 / volume).toBeCloseTo(1, 2);
});
