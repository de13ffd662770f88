import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { blockVignette } from './blockVignette.ts';

const given = {
  squeeze: 2, elementSpacingMm: 70, rearToPupilMm: 45, focalLengthMm: 50, fNumber: 2.8, sensorWidthMm: 22, sensorHeightMm: 18.6,
  rearClearMm: 42, frontClearMm: 70,
};

property.prop([
  fc.record({
    squeeze: fc.double({ min: 1.2, max: 2, noNaN: true }), rearToPupilMm: fc.double({ min: 10, max: 100, noNaN: true }),
    fNumber: fc.double({ min: 1.4, max: 8, noNaN: true }), frontClearMm: fc.double({ min: 30, max: 100, noNaN: true }),
  }),
])('passes as many rays as are traced through the two thin elements', (varied) => {
  const at = { ...given, ...varied };
  const { rearShare, frontShare } = blockVignette(at);
  // Rays from all over the pupil, parallel behind the block, bent sideways by the rear element of focal length s·t/(s − 1).
  const [across, up] = [at.sensorWidthMm / 2 / at.focalLengthMm, at.sensorHeightMm / 2 / at.focalLengthMm];
  const rearFocal = (at.squeeze * at.elementSpacingMm) / (at.squeeze - 1);
  const radius = at.focalLengthMm / at.fNumber / 2;
  let [rays, rear, front] = [0, 0, 0];
  for (let i = 0; i < 400; i += 1) {
    for (let j = 0; j < 400; j += 1) {
      const [px, py] = [((i + 0.5) / 200 - 1) * radius, ((j + 0.5) / 200 - 1) * radius];
      if (Math.hypot(px, py) > radius) continue;
      rays += 1;
      const [x, y] = [px + at.rearToPupilMm * across, py + at.rearToPupilMm * up];
      if (Math.hypot(x, y) <= at.rearClearMm / 2) rear += 1;
      const xAtFront = x + at.elementSpacingMm * (across - x / rearFocal);
      if (Math.hypot(xAtFront, y + at.elementSpacingMm * up) <= at.frontClearMm / 2) front += 1;
    }
  }
  expect(Math.abs(rearShare - rear / rays)).toBeLessThan(0.003);
  expect(Math.abs(frontShare - front / rays)).toBeLessThan(0.003);
});

test('wide glass cuts nothing, a taking lens too wide sees only the barrel', () => {
  const wide = blockVignette({ ...given, rearClearMm: 200, frontClearMm: 300 });
  expect(wide).toMatchObject({ rearShare: 1, frontShare: 1, leastShare: 1, mostShare: 1 });
  expect(blockVignette({ ...given, focalLengthMm: 18 }).mostShare).toBe(0);
});

test('a rear glass without opening is refused', () => {
  expect(blockVignette.answer({ ...given, rearClearMm: 0 })).toMatchObject({ ok: false, faults: [{ path: 'rearClearMm' }] });
});
