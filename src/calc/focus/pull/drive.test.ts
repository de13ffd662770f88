import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { type DriveGiven, RING, STATE_LENGTH, driveOf, runDrive } from './drive.ts';

const STEP_S = 0.001;
const free: DriveGiven = { motorRpm: Infinity, gearRatio: 1, spinUpMs: 0, motorLagMs: 0, linkDelayMs: 0, playDeg: 0, handStepDeg: 0 };

/** The ring after each step of a hand's path. */
function follow(given: DriveGiven, hand: (step: number) => number, steps: number): Float64Array {
  const drive = driveOf(given, STEP_S, -1000, 1000);
  const state = new Float64Array(STATE_LENGTH);
  const path = Float64Array.from({ length: steps }, (_, n) => hand(n));
  const corrections = new Float64Array(steps + drive.linkSteps);
  return path.map((_, n) => {
    runDrive(drive, state, path, corrections, n, n + 1, 0);
    return state[RING]!;
  });
}

test('a free drive is the hand itself', () => {
  expect([...follow(free, (n) => n * n, 5)]).toEqual([0, 1, 4, 9, 16]);
});

test('a lag answers a step by 1 − 1/e after its time constant, a steady turn by speed × lag behind (first-order system, textbook)', () => {
  const lag = { ...free, motorLagMs: 100 };
  expect(follow(lag, () => 1, 100)[99]).toBeCloseTo(1 - 1 / Math.E, 2);
  const ring = follow(lag, (n) => n * STEP_S * 30, 2000);
  expect(30 * 1999 * STEP_S - ring[1999]!).toBeCloseTo(30 * 0.1, 2);
});

test('a long turn takes way/speed + speed/acceleration (uniform acceleration, textbook), and does not run past its end', () => {
  // 60 rpm through 2:1 is 180 deg/s at the ring, reached in 0.3 s.
  const ring = follow({ ...free, motorRpm: 60, gearRatio: 2, spinUpMs: 300, motorLagMs: 5 }, () => 270, 2500);
  const arrived = ring.findIndex((deg) => deg > 269.5) * STEP_S;
  const expected = 270 / 180 + 0.3;
  expect(arrived).toBeGreaterThan(expected - 0.08);
  expect(arrived).toBeLessThan(expected + 0.03);
  expect(Math.max(...ring)).toBeLessThan(270.2);
});

test('play is lost once at each reversal, whole', () => {
  const there = follow({ ...free, playDeg: 2 }, (n) => (n < 50 ? n : 100 - n), 100);
  expect(there[49]).toBe(48);
  expect(there[50]).toBe(49);
  expect(there[52]).toBe(49);
  expect(there[60]).toBe(41);
});

test('a correction arrives after the delay of the link, on the steps of the hand unit', () => {
  const drive = driveOf({ ...free, linkDelayMs: 20, handStepDeg: 0.5 }, STEP_S, -10, 10);
  const state = new Float64Array(STATE_LENGTH);
  const corrections = new Float64Array(100 + drive.linkSteps);
  const ring: number[] = [];
  for (let n = 0; n < 100; n++) {
    runDrive(drive, state, new Float64Array(100), corrections, n, n + 1, 100);
    ring.push(state[RING]!);
  }
  expect(ring.findIndex((deg) => deg > 0)).toBe(22); // 0.25° rounds to a half-degree step: 3 ms at 100 deg/s, 20 ms late
  expect(ring.every((deg) => Number.isInteger(deg * 2))).toBe(true);
  expect(Math.max(...ring)).toBeLessThanOrEqual(10);
});

const from = (min: number, max: number) => fc.double({ min, max, noNaN: true });

property.prop([from(1, 600), from(0, 500), from(0, 200), from(0.1, 300)])(
  'the ring never turns faster than the motor lets it, nor oscillates about a standing hand',
  (motorRpm, spinUpMs, motorLagMs, wayDeg) => {
    const ring = follow({ ...free, motorRpm, spinUpMs, motorLagMs }, () => wayDeg, 3000);
    const fastest = ring.reduce((most, deg, n) => (n === 0 ? 0 : Math.max(most, Math.abs(deg - ring[n - 1]!) / STEP_S)), 0);
    expect(fastest).toBeLessThanOrEqual(6 * motorRpm * (1 + 1e-9));
    const accel = spinUpMs === 0 ? Infinity : (6 * motorRpm) / (spinUpMs / 1000);
    // It may run over by what it covers in two steps of braking.
    const stepOfBraking = Math.min(6 * motorRpm, 3 * Math.sqrt(2 * accel * wayDeg)) * STEP_S;
    expect(Math.max(...ring) - wayDeg).toBeLessThanOrEqual(wayDeg * 1e-9 + stepOfBraking);
  },
);
