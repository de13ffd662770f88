import { fc, test as property } from '@fast-check/vitest';
import { glMatrix, mat2, vec2 } from 'gl-matrix';
import { expect, test } from 'vitest';
import { squeezeSkew } from './squeezeSkew.ts';

glMatrix.setMatrixArrayType(Array);

/** M by the library's own scalings, rotations and products. */
function turnedSqueeze(squeeze: number, rotationDeg: number): mat2 {
  const angle = (rotationDeg * Math.PI) / 180;
  return [
    mat2.fromScaling(mat2.create(), [squeeze, 1]),
    mat2.fromRotation(mat2.create(), angle),
    mat2.fromScaling(mat2.create(), [1 / squeeze, 1]),
    mat2.fromRotation(mat2.create(), -angle),
  ].reduce((product, factor) => mat2.multiply(mat2.create(), product, factor));
}

const through = (matrix: mat2, [x, y]: [number, number]) => vec2.transformMat2(vec2.create(), [x, y], matrix) as [number, number];
const degrees = (radians: number) => (radians * 180) / Math.PI;

property.prop([fc.double({ min: 1, max: 2.5, noNaN: true }), fc.double({ min: -30, max: 30, noNaN: true })])(
  'is the product of matrices of a general-purpose library (gl-matrix)',
  (squeeze, rotationDeg) => {
    const skew = squeezeSkew({ squeeze, rotationDeg, widthPx: 4096, heightPx: 1716 });
    const matrix = turnedSqueeze(squeeze, rotationDeg);
    const upright = through(matrix, [0, 1]);
    const level = through(matrix, [1, 0]);
    const corner = through(matrix, [2048, 858]);
    expect(mat2.determinant(matrix)).toBeCloseTo(1, 9);
    expect(skew.verticalLeanDeg).toBeCloseTo(Math.abs(degrees(Math.atan(upright[0] / upright[1]))), 9);
    expect(skew.horizontalLeanDeg).toBeCloseTo(Math.abs(degrees(Math.atan(level[1] / level[0]))), 9);
    expect(skew.cornerShiftPx).toBeCloseTo(vec2.distance(corner, [2048, 858]), 6);
  },
);

test('the matrix for 2:1 turned by one degree, derived by hand', () => {
  const [xx, yx, xy, yy] = turnedSqueeze(2, 1) as [number, number, number, number];
  expect([xx, xy, yx, yy].map((entry) => entry.toFixed(6))).toEqual(['1.000305', '-0.017450', '-0.008725', '0.999848']);
});

test('a spherical lens may turn as it likes, and an anamorphic one by whole half turns', () => {
  expect(squeezeSkew({ squeeze: 1, rotationDeg: 17, widthPx: 1920, heightPx: 1080 }).cornerShiftPx).toBe(0);
  expect(squeezeSkew({ squeeze: 2, rotationDeg: 180, widthPx: 1920, heightPx: 1080 }).cornerShiftPx).toBeCloseTo(0, 9);
});

test('a tenth of a degree leans by (s − 1) times as much, to the fourth digit', () => {
  expect(squeezeSkew({ squeeze: 1.8, rotationDeg: 0.1, widthPx: 1920, heightPx: 1080 }).verticalLeanDeg).toBeCloseTo(0.08, 5);
});

test('a squeeze of zero is refused', () => {
  const answer = squeezeSkew.answer({ squeeze: 0, rotationDeg: 1, widthPx: 1920, heightPx: 1080 });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'squeeze' }] });
});
