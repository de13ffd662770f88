import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { closeUp } from './closeUp.ts';
import { closeUpPower } from './closeUpPower.ts';

property.prop([
  fc.double({ min: 300, max: 3000, noNaN: true }),
  fc.double({ min: 1, max: 10, noNaN: true }),
  fc.double({ min: 400, max: 3000, noNaN: true }),
])('the least power brings the closest mark to the near end, the most brings infinity to the far end', (shotNearMm, times, closeFocusMm) => {
  const shotFarMm = shotNearMm * times;
  const { leastDpt, mostDpt } = closeUpPower({ shotNearMm, shotFarMm, closeFocusMm, diopterToSensorMm: 200 });
  const atClosest = closeUp({ powerDpt: leastDpt, focusDistanceMm: closeFocusMm, diopterToSensorMm: 200 });
  const atInfinity = closeUp({ powerDpt: mostDpt, focusDistanceMm: Infinity, diopterToSensorMm: 200 });
  expect(atClosest.tapeMm).toBeLessThanOrEqual(shotNearMm * (1 + 1e-9));
  if (leastDpt > 0) expect(atClosest.tapeMm / shotNearMm).toBeCloseTo(1, 9);
  expect(atInfinity.tapeMm / shotFarMm).toBeCloseTo(1, 9);
});

test('a shot to infinity takes none, and ends in the wrong order are refused', () => {
  const shot = { shotNearMm: 700, closeFocusMm: 1200, diopterToSensorMm: 200 };
  expect(closeUpPower({ ...shot, shotFarMm: Infinity }).mostDpt).toBe(0);
  expect(closeUpPower.answer({ ...shot, shotFarMm: 600 })).toMatchObject({ ok: false, faults: [{ path: 'shotNearMm' }] });
});
