import { fc, test as property } from '@fast-check/vitest';
import { expect } from 'vitest';
import { roundOpening } from './roundOpening.ts';

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

property.prop([fc.record({
  horizontalPupilMm: mm(2, 20), horizontalPupilDistanceMm: mm(0, 150), verticalPupilMm: mm(2, 40), verticalPupilDistanceMm: mm(0, 200),
  horizontalHalfAngleDeg: mm(0, 35), verticalHalfAngleDeg: mm(0, 20), clearDiameterMm: mm(20, 150),
})])('passes as many rays as are drawn through it', (given) => {
  const { share } = roundOpening(given);
  const tangent = (deg: number) => Math.tan((deg * Math.PI) / 180);
  let [rays, through] = [0, 0];
  for (let i = 0; i < 300; i += 1) {
    for (let j = 0; j < 300; j += 1) {
      const [u, v] = [(i + 0.5) / 150 - 1, (j + 0.5) / 150 - 1];
      if (Math.hypot(u, v) > 1) continue;
      rays += 1;
      const x = (u * given.horizontalPupilMm) / 2 + given.horizontalPupilDistanceMm * tangent(given.horizontalHalfAngleDeg);
      const y = (v * given.verticalPupilMm) / 2 + given.verticalPupilDistanceMm * tangent(given.verticalHalfAngleDeg);
      if (Math.hypot(x, y) <= given.clearDiameterMm / 2) through += 1;
    }
  }
  expect(Math.abs(share - through / rays)).toBeLessThan(0.01);
});
