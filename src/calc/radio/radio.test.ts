import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { sensitivityDbm } from '../../standards/receiverSensitivity.ts';
import { freeSpaceLoss } from './freeSpaceLoss.ts';
import { indoorLoss } from './indoorLoss.ts';
import { link } from './link.ts';
import { reach } from './reach.ts';
import { walkedMargin } from './walkedMargin.ts';

test('the printed short form of ITU-R P.525, 32.4 + 20 log f + 20 log d(km), is met to its digits', () => {
  for (const [frequencyMHz, distanceM] of [[5180, 100], [5825, 12], [2437, 1500], [600, 30]] as const) {
    const printed = 32.4 + 20 * Math.log10(frequencyMHz) + 20 * Math.log10(distanceM / 1000);
    expect(Math.abs(freeSpaceLoss({ frequencyMHz, distanceM }).lossDb - printed)).toBeLessThan(0.05);
  }
});

test('ITU-R P.1238 at 5.2 GHz: one office floor costs 16 dB, and no indoor path is better than free space', () => {
  const office = { frequencyMHz: 5200, distanceM: 30, lossCoefficient: 31, floorLossDb: 0 };
  expect(indoorLoss({ ...office, floorLossDb: 16 }).lossDb - indoorLoss(office).lossDb).toBeCloseTo(16, 12);
  expect(indoorLoss(office).lossDb).toBeGreaterThan(freeSpaceLoss(office).lossDb);
  expect(indoorLoss.answer({ ...office, distanceM: 0.5 })).toMatchObject({ ok: false, faults: [{ path: 'distanceM' }] });
});

test('noise of 20 MHz at 290 K is −100.96 dBm, and IEEE 802.11 asks for sensitivities above it', () => {
  const noiseDbm = 10 * Math.log10(1.380649e-23 * 290 * 20e6 * 1000);
  expect(noiseDbm).toBeCloseTo(-100.96, 2);
  expect(sensitivityDbm('BPSK 1/2', 20)).toBeGreaterThan(noiseDbm);
  expect(sensitivityDbm('64-QAM 5/6', 40)).toBe(-61);
  expect(sensitivityDbm('morse', 20)).toBeUndefined();
});

const budget = fc.record({
  frequencyMHz: fc.double({ min: 400, max: 6000, noNaN: true }), eirpDbm: fc.double({ min: 0, max: 36, noNaN: true }),
  receiveGainDbi: fc.double({ min: -3, max: 15, noNaN: true }),
  extraLossDb: fc.double({ min: 0, max: 40, noNaN: true }), sensitivityDbm: fc.double({ min: -90, max: -60, noNaN: true }),
});
property.prop([budget, fc.double({ min: 0, max: 20, noNaN: true })])('at its reach in free space a link has just the wanted margin',
  (one, wantedMarginDb) => {
  const { reachM } = reach({ ...one, wantedMarginDb, lossCoefficient: 20 });
  const { lossDb } = freeSpaceLoss({ frequencyMHz: one.frequencyMHz, distanceM: reachM });
  expect(link({ ...one, pathLossDb: lossDb }).marginDb).toBeCloseTo(wantedMarginDb, 6);
});

property.prop([fc.double({ min: 1, max: 500, noNaN: true }), fc.double({ min: 1, max: 500, noNaN: true }),
  fc.double({ min: 20, max: 35, noNaN: true })])(
  'a walked link has margin on this side of where it broke up, none there, and less than none beyond',
  (breaksUpAtM, distanceM, lossCoefficient) => {
    const { marginDb } = walkedMargin({ breaksUpAtM, distanceM, lossCoefficient, extraLossDb: 0 });
    expect(Math.sign(marginDb)).toBe(Math.sign(breaksUpAtM - distanceM));
    expect(walkedMargin({ breaksUpAtM, distanceM: breaksUpAtM, lossCoefficient, extraLossDb: 8 }).marginDb).toBe(-8);
  },
);

test('no distance and no frequency are faults', () => {
  expect(freeSpaceLoss.answer({ frequencyMHz: 5180, distanceM: 0 })).toMatchObject({ ok: false, faults: [{ path: 'distanceM' }] });
  expect(reach.answer({ frequencyMHz: -1, eirpDbm: 20, receiveGainDbi: 0, extraLossDb: 0, sensitivityDbm: -70, wantedMarginDb: 0,
    lossCoefficient: 20 })).toMatchObject({ ok: false });
});
