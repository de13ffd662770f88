import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { balance } from './balance.ts';
import { counterbalance } from './counterbalance.ts';
import { holdingEndurance } from './holdingEndurance.ts';
import { packPlace } from './packPlace.ts';
import { shoulderHold } from './shoulderHold.ts';

const mass = fc.double({ min: 100, max: 20_000, noNaN: true });
const place = fc.double({ min: -400, max: 400, noNaN: true });

const reach = fc.double({ min: 50, max: 600, noNaN: true });
const tilt = fc.double({ min: -90, max: 90, noNaN: true });

property.prop([mass, place, reach])('hands and shoulder share the weight, and no moment is left', (massG, aheadOfPadMm, handsAheadMm) => {
  const { momentNm, handForceN, padForceN } = shoulderHold({ massG, aheadOfPadMm, handsAheadMm });
  expect(handForceN + padForceN).toBeCloseTo(massG * 9.806_65e-3, 9);
  expect(handForceN * handsAheadMm * 1e-3).toBeCloseTo(momentNm, 9);
});

property.prop([mass, place, mass, place])('with the pack where it says, the common centre is as wanted', (massG, centreMm, packMassG, wantedMm) => {
  const { packMm } = packPlace({ massG, centreMm, packMassG, wantedMm });
  const boxMm: [number, number, number] = [1, 1, 1];
  const rig = { massG, centreMm: [0, 0, centreMm] as [number, number, number], boxMm };
  const together = balance({ bodies: [rig, { massG: packMassG, centreMm: [0, 0, packMm], boxMm }] });
  expect(together.centreMm[2]).toBeCloseTo(wantedMm, 6);
});

property.prop([mass, place, place, tilt])('the moment is the weight at the turned centre', (massG, aboveAxisMm, aheadOfAxisMm, tiltDeg) => {
  const { momentNm, springNm, leftOverNm } = counterbalance({ massG, aboveAxisMm, aheadOfAxisMm, tiltDeg });
  const angle = Math.atan2(aheadOfAxisMm, aboveAxisMm) + (tiltDeg * Math.PI) / 180;
  const ahead = Math.hypot(aheadOfAxisMm, aboveAxisMm) * Math.sin(angle);
  expect(momentNm).toBeCloseTo(massG * 9.806_65e-6 * ahead, 7);
  expect(momentNm).toBeCloseTo(springNm * Math.sin((tiltDeg * Math.PI) / 180) + leftOverNm, 9);
});

property.prop([fc.double({ min: 0.15, max: 0.99, noNaN: true })])('the harder the hold, the shorter (Rohmert)', (forceShare) => {
  const minutes = (share: number) => holdingEndurance({ forceShare: share, holdMin: 1 }).enduranceMin;
  expect(minutes(forceShare + 0.01)).toBeLessThan(minutes(forceShare));
});

test('all of one\'s strength lasts a tenth of a minute; no strength is no hold', () => {
  expect(holdingEndurance({ forceShare: 1, holdMin: 0 }).enduranceMin).toBeCloseTo(0.1, 12);
  expect(holdingEndurance.answer({ forceShare: 0, holdMin: 1 }).ok).toBe(false);
});
