import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { screwJoint } from './screwJoint.ts';

const given = { torqueNm: 2, diameterMm: 6.35, nutFactor: 0.2, friction: 0.15, innerRadiusMm: 4, outerRadiusMm: 15 };

test.each([[0.2, 82], [0.1, 41]])('a 1/2-13 at 75 %% of 92 ksi takes, with K %d, %i ft·lb (published table)', (nutFactor, ftLb) => {
  const newtons = 0.75 * 92_000 * 0.1419 * 4.448_221_615;
  const perNm = screwJoint({ ...given, torqueNm: 1, diameterMm: 12.7, nutFactor }).preloadN;
  expect(Math.round(newtons / perNm / 1.355_818)).toBe(ftLb);
});

test('an examination clutch: μ 0.25, bore 25 mm, 1 MPa, 5 kW at 2000 rpm want an outer radius of 39.4 mm', () => {
  const wantedNm = 5000 / ((2000 * 2 * Math.PI) / 60);
  const slip = (outerRadiusMm: number) => {
    const forceN = Math.PI * (outerRadiusMm ** 2 - 25 ** 2);
    return screwJoint({ torqueNm: forceN * 0.2 * 0.01, diameterMm: 10, nutFactor: 0.2, friction: 0.25, innerRadiusMm: 25, outerRadiusMm }).slipNm;
  };
  expect(slip(39.35)).toBeLessThan(wantedNm);
  expect(slip(39.45)).toBeGreaterThan(wantedNm);
});

property.prop([fc.double({ min: 0.001, max: 0.999, noNaN: true })])('the mean radius lies between bore and rim', (share) => {
  const { preloadN, slipNm } = screwJoint({ ...given, innerRadiusMm: 15 * share });
  const meanMm = (slipNm * 1000) / (0.15 * preloadN);
  expect(meanMm).toBeGreaterThanOrEqual(15 * share * (1 - 1e-12));
  expect(meanMm).toBeLessThanOrEqual(15);
});

test('without friction it turns at nothing; a ring of no width is refused', () => {
  expect(screwJoint({ ...given, friction: 0 }).slipNm).toBe(0);
  const faults = [{ path: 'innerRadiusMm', message: expect.stringContaining('15 mm') }];
  expect(screwJoint.answer({ ...given, innerRadiusMm: 15 })).toMatchObject({ ok: false, faults });
});
