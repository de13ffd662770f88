import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { adapterCorner } from './adapterCorner.ts';
import { blockVignette } from './blockVignette.ts';

const given = {
  squeeze: 2, elementSpacingMm: 78, rearToPupilMm: 35, focalLengthMm: 58, fNumber: 2.4, sensorWidthMm: 24.7, sensorHeightMm: 20.7,
  rearClearMm: 50, frontClearMm: 74, focuserAheadMm: 72, focuserClearMm: 80,
};
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

property.prop([fc.record({ squeeze: mm(1.2, 2), focalLengthMm: mm(40, 135), fNumber: mm(1.4, 8), frontClearMm: mm(40, 100), focuserClearMm: mm(40, 120), focuserAheadMm: mm(0, 90) })], { numRuns: 40 })(
  'passes as many rays as are traced through the thin elements one by one',
  (varied) => {
    const at = { ...given, ...varied };
    const [across, up] = [at.sensorWidthMm / 2 / at.focalLengthMm, at.sensorHeightMm / 2 / at.focalLengthMm];
    const rearFocal = (at.squeeze * at.elementSpacingMm) / (at.squeeze - 1);
    const frontFocal = -at.elementSpacingMm / (at.squeeze - 1);
    const radius = at.focalLengthMm / at.fNumber / 2;
    let [rays, through] = [0, 0];
    for (let i = 0; i < 200; i += 1) {
      for (let j = 0; j < 200; j += 1) {
        const [px, py] = [((i + 0.5) / 100 - 1) * radius, ((j + 0.5) / 100 - 1) * radius];
        if (Math.hypot(px, py) > radius) continue;
        rays += 1;
        const [x, y] = [px + at.rearToPupilMm * across, py + at.rearToPupilMm * up];
        const slope = across - x / rearFocal;
        const [xFront, yFront] = [x + at.elementSpacingMm * slope, y + at.elementSpacingMm * up];
        const slopeOut = slope - xFront / frontFocal;
        const [xFar, yFar] = [xFront + at.focuserAheadMm * slopeOut, yFront + at.focuserAheadMm * up];
        if (Math.hypot(x, y) <= at.rearClearMm / 2 && Math.hypot(xFront, yFront) <= at.frontClearMm / 2 && Math.hypot(xFar, yFar) <= at.focuserClearMm / 2) through += 1;
      }
    }
    expect(Math.abs(adapterCorner(at).share - through / rays)).toBeLessThan(0.01);
  },
);

property.prop([fc.record({ fNumber: mm(1.4, 8), focalLengthMm: mm(40, 135) })])('without a focuser it lies between the bounds of the block alone', (varied) => {
  const at = { ...given, ...varied, focuserAheadMm: 0, focuserClearMm: given.frontClearMm };
  const { leastShare, mostShare } = blockVignette({
    squeeze: at.squeeze, elementSpacingMm: at.elementSpacingMm, rearToPupilMm: at.rearToPupilMm, focalLengthMm: at.focalLengthMm, fNumber: at.fNumber,
    sensorWidthMm: at.sensorWidthMm, sensorHeightMm: at.sensorHeightMm, rearClearMm: at.rearClearMm, frontClearMm: at.frontClearMm,
  });
  const { share } = adapterCorner(at);
  expect(share).toBeGreaterThanOrEqual(leastShare - 1e-4);
  expect(share).toBeLessThanOrEqual(mostShare + 1e-4);
});

test('glass wide enough cuts nothing; a focuser as narrow as a straw passes nothing', () => {
  expect(adapterCorner({ ...given, rearClearMm: 200, frontClearMm: 300, focuserClearMm: 300 }).share).toBeCloseTo(1, 12);
  expect(adapterCorner({ ...given, focuserClearMm: 5 }).share).toBe(0);
});
