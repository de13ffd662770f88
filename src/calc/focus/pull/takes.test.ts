import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import type { PullGiven } from './given.ts';
import { prepareShot } from './shot.ts';
import { crossoverRadPerS, oneTake, runTakes, wholeDelayS } from './takes.ts';

/** A lens that turns 100 000°·mm over the distance: at 2 m 50°, as a helicoid with the datum at the sensor would. */
const scale = [Infinity, 20_000, 10_000, 5000, 3000, 2000, 1500, 1000, 700, 500].map((distanceMm) => ({
  distanceMm, angleDeg: 100_000 / distanceMm,
}));

/** Nobody errs, nothing is late, the hand turns the ring itself. */
const ideal: PullGiven = {
  seed: 3, trials: 1, seconds: 10, stepMs: 2, frameRateHz: 500, keyframes: [{ atS: 0, distanceMm: 3000 }], subjectMissMm: 0, swayMm: 0, swayHz: 0.7,
  scale, focalLengthMm: 50, fNumber: 2, circleOfConfusionMm: 0.025, way: 'picture', marksPerMove: 0, markErrorMm: 0, markErrorDeg: 0,
  stopErrorDeg: 0, timingSpreadMs: 0, lateMs: 0, pictureDelayMs: 69, visibleBlurMm: 0, reactionMs: 230, reactionSpreadMs: 0, direction: 'known',
  phaseMarginDeg: 40, crossoverCapRadPerS: 50, remnantShare: 0, linkDelayMs: 0, handStepDeg: 0, motorRpm: Infinity, gearRatio: 1, spinUpMs: 0,
  motorLagMs: 0, playDeg: 0,
};

/** A subject whose wanted ring angle runs at a constant rate: steady moves between many points evenly spaced over 1/distance. */
const ramp = (fromMm: number, degPerS: number, seconds: number): PullGiven['keyframes'] =>
  Array.from({ length: 201 }, (_, i) => ({
    atS: (seconds * i) / 200, distanceMm: 100_000 / (100_000 / fromMm + (degPerS * seconds * i) / 200), by: 'steady' as const,
  }));

const errorsOf = (given: PullGiven, trial = 0) => {
  const { wantedDeg, ringDeg } = oneTake(prepareShot(given), trial);
  return wantedDeg.map((wanted, frame) => wanted - ringDeg[frame]!);
};

/** Largest error in three seconds of 500 frames each. */
const largestFrom = (errors: Float64Array, fromS: number) =>
  errors.slice(fromS * 500, (fromS + 3) * 500).reduce((most, error) => Math.max(most, Math.abs(error)), 0);

/** When a rack of 30° by the picture has come within half a target's width for good: ID = log2(2A/W). */
function arrives(pictureDelayMs: number, bits: number): number {
  const errors = errorsOf({
    ...ideal, pictureDelayMs, reactionMs: 231, phaseMarginDeg: 60, seconds: 8,
    keyframes: [{ atS: 0, distanceMm: 5000 }, { atS: 0.01, distanceMm: 2000, by: 'rack' }],
  });
  const half = 30 / 2 ** bits;
  return (errors.length - errors.toReversed().findIndex((error) => Math.abs(error) > half)) / 500;
}

const largestBlur = (given: PullGiven) => runTakes(prepareShot(given), 0, 1, false).largestBlurMm[0]!;

/** How far from an angle the ring ends in each of some takes. */
const endsOff = (given: PullGiven, wantedDeg: number, takes: number) => {
  const shot = prepareShot(given);
  return Array.from({ length: takes }, (_, trial) => oneTake(shot, trial).ringDeg.at(-1)! - wantedDeg);
};

const rms = (values: readonly number[]) => Math.sqrt(values.reduce((sum, one) => sum + one * one, 0) / values.length);

describe('the puller who follows the picture is the crossover model (McRuer & Jex 1967)', () => {
  test('40° at 0.3 s give 2.9089 rad/s; 4 rad/s at 0.2 s leave 44.163°', () => {
    expect(crossoverRadPerS(0.3, (40 * Math.PI) / 180, 50)).toBeCloseTo(2.9089, 4);
    expect(crossoverRadPerS(0.2, (44.163 * Math.PI) / 180, 50)).toBeCloseTo(4, 4);
    expect(wholeDelayS(ideal, 230)).toBeCloseTo(0.3, 12);
  });

  test.each([2, 5])('a steady turn of %d deg/s is followed speed/crossover behind', (degPerS) => {
    const errors = errorsOf({ ...ideal, keyframes: ramp(8000, degPerS, 10) });
    const settled = errors.slice(4500);
    const mean = settled.reduce((sum, error) => sum + error, 0) / settled.length;
    expect(mean / (degPerS / 2.9089)).toBeCloseTo(1, 2);
  });

  test('it dies out below crossover × delay = π/2, grows above, and swings once in four delays there', () => {
    const shot = prepareShot({ ...ideal, seconds: 24, keyframes: [{ atS: 0, distanceMm: 3000 }, { atS: 0.01, distanceMm: 2800, by: 'rack' }] });
    const swing = (marginRad: number) => {
      const { wantedDeg, ringDeg } = oneTake({ ...shot, marginRad }, 0);
      return wantedDeg.map((wanted, frame) => wanted - ringDeg[frame]!);
    };
    const below = swing(0.06);
    const above = swing(-0.06);
    expect(largestFrom(below, 20)).toBeLessThan(0.5 * largestFrom(below, 5));
    expect(largestFrom(above, 20)).toBeGreaterThan(2 * largestFrom(above, 5));
    const edge = swing(0);
    const crossings = [...edge.keys()].filter((frame) => frame > 1000 && edge[frame]! > 0 && edge[frame - 1]! <= 0).map((frame) => frame / 500);
    const period = (crossings.at(-1)! - crossings[0]!) / (crossings.length - 1);
    expect(period).toBeGreaterThan(4 * 0.3 * 0.98);
    expect(period).toBeLessThan(4 * 0.3 * 1.02);
  });

  test('nothing is corrected until the blur is visible', () => {
    const shot = prepareShot({ ...ideal, keyframes: ramp(8000, 1, 10), visibleBlurMm: 0.05 });
    const { blurMm, ringDeg } = oneTake(shot, 0);
    const seen = blurMm.findIndex((blur) => blur > 0.05);
    const moved = ringDeg.findIndex((deg) => deg !== ringDeg[0]);
    expect(seen).toBeGreaterThan(100);
    expect((moved - seen) / 500).toBeCloseTo(0.299, 2);
  });

  const speeds = fc.double({ min: 0.5, max: 15, noNaN: true });
  property.prop([speeds, fc.integer({ min: 0, max: 400 }), fc.integer({ min: 20, max: 300 })], { numRuns: 40 })(
    'a single ramp gets no sharper with more delay',
    (degPerS, pictureDelayMs, more) => {
      const given = { ...ideal, frameRateHz: 50, seconds: 4, keyframes: ramp(8000, degPerS, 4), visibleBlurMm: 0.01 };
      const soft = (delay: number) => runTakes(prepareShot({ ...given, pictureDelayMs: delay }), 0, 1, false).softFrames[0]!;
      expect(soft(pictureDelayMs + more)).toBeGreaterThanOrEqual(soft(pictureDelayMs) - 1); // one frame: delays fall on steps
    },
  );

  test('racks by the picture take 0.1 to 0.27 s for each bit of difficulty, and suffer from lag as people do', () => {
    // Sanity bands: Fitts 1954 about 10 bit/s, mice 3.7 to 4.9 bit/s (Soukoreff & MacKenzie 2004), both from memory; 225 ms of lag
    // lengthen pointing by 64 % (MacKenzie & Ware 1993; read). Pointing starts with a throw that needs no picture, so we suffer more.
    const perBit = (arrives(0, 7) - arrives(0, 2)) / 5;
    expect(perBit).toBeGreaterThan(0.1);
    expect(perBit).toBeLessThan(0.27);
    const lengthened = arrives(225, 4) / arrives(0, 4);
    expect(lengthened).toBeGreaterThan(1.64);
    expect(lengthened).toBeLessThan(2.1);
  });
});

describe('the way to turn is found, not given', () => {
  const seen: PullGiven = { ...ideal, direction: 'seen', frameRateHz: 25, visibleBlurMm: 0.01, remnantShare: 0 };

  test('a walk is followed at once, the way it goes', () => {
    const keyframes = [{ atS: 0, distanceMm: 6000 }, { atS: 1, distanceMm: 6000 }, { atS: 6, distanceMm: 2500 }];
    const told = oneTake(prepareShot({ ...seen, direction: 'known', keyframes }), 0).blurMm;
    const found = oneTake(prepareShot({ ...seen, keyframes }), 0).blurMm;
    expect(Math.max(...found)).toBeLessThan(1.2 * Math.max(...told));
  });

  test('a soft face that stands still is hunted for: half the takes start the wrong way, and nearly all get there', () => {
    // By marks and picture: the mark is off and the subject stands.
    const given: PullGiven = { ...seen, way: 'both', markErrorDeg: 3, keyframes: [{ atS: 0, distanceMm: 3000 }], seconds: 12 };
    const shot = prepareShot(given);
    const takes = Array.from({ length: 200 }, (_, trial) => oneTake(shot, trial).blurMm);
    const soft = takes.filter((blur) => blur[0]! > 0.02);
    const wrong = soft.filter((blur) => Math.max(...blur) > 1.05 * blur[0]!);
    expect(wrong.length / soft.length).toBeGreaterThan(0.35);
    expect(wrong.length / soft.length).toBeLessThan(0.65);
    expect(takes.filter((blur) => blur.at(-1)! <= 0.015).length).toBeGreaterThan(190);
  });

  test('to be told is a bound: finding out is never better on the mean', () => {
    const walk: PullGiven = {
      ...seen, swayMm: 15, subjectMissMm: 40, remnantShare: 0.4, seconds: 8,
      keyframes: [{ atS: 0, distanceMm: 5000 }, { atS: 4, distanceMm: 2000 }, { atS: 6, distanceMm: 2000 }, { atS: 8, distanceMm: 3000 }],
    };
    for (const way of ['picture', 'both'] as const) {
      const soft = (direction: PullGiven['direction']) =>
        runTakes(prepareShot({ ...walk, way, direction, markErrorDeg: 1 }), 0, 200, false).softFrames.reduce((a, b) => a + b);
      expect(soft('seen')).toBeGreaterThanOrEqual(soft('known'));
    }
  });
});

describe('the puller who knows the marks', () => {
  const walk: PullGiven = {
    ...ideal, way: 'marks', frameRateHz: 25,
    keyframes: [{ atS: 1, distanceMm: 6000 }, { atS: 5, distanceMm: 1500 }, { atS: 7, distanceMm: 1500 }, { atS: 9, distanceMm: 4000 }],
  };

  test('is exact at the marks without errors, and everywhere as marks get closer: the error falls with their square', () => {
    const shot = prepareShot({ ...walk, marksPerMove: 4 });
    const { wantedDeg, ringDeg } = oneTake(shot, 0);
    for (const atS of [0, 1, 5, 6, 7, 9, 9.92]) expect(ringDeg[Math.round(atS * 25)]).toBeCloseTo(wantedDeg[Math.round(atS * 25)]!, 4);
    // Straight pieces against a curve: a fifth of the length, a twenty-fifth of the error (interpolation theory).
    const ratio = largestBlur({ ...walk, marksPerMove: 9 }) / largestBlur({ ...walk, marksPerMove: 49 });
    expect(ratio).toBeGreaterThan(18);
    expect(ratio).toBeLessThan(32);
    expect(largestBlur({ ...walk, marksPerMove: 99 })).toBeLessThan(0.002);
  });

  test('stays exact through a motor within its limits, and misses with one that is too slow', () => {
    const motor: PullGiven = { ...walk, marksPerMove: 99, motorRpm: 100, gearRatio: 3, spinUpMs: 50, motorLagMs: 20, linkDelayMs: 30 };
    expect(largestBlur(motor)).toBeLessThan(0.004);
    expect(largestBlur({ ...motor, motorRpm: 5 })).toBeGreaterThan(0.05);
  });

  test('a rack by hard stops lands exactly, whatever its timing; its stops carry their own error', () => {
    const rack: PullGiven = {
      ...walk, way: 'stops', timingSpreadMs: 80, markErrorDeg: 5, seconds: 6,
      keyframes: [{ atS: 2, distanceMm: 5000 }, { atS: 3, distanceMm: 2000, by: 'rack' }],
    };
    expect(rms(endsOff(rack, 50, 50))).toBeLessThan(1e-9);
    const off = rms(endsOff({ ...rack, stopErrorDeg: 1 }, 50, 1000));
    expect(off).toBeGreaterThan(0.91); // four standard errors of 1000 draws
    expect(off).toBeLessThan(1.09);
  });

  test('play costs half its angle wherever the ring rests after a turn', () => {
    const { wantedDeg, ringDeg } = oneTake(prepareShot({ ...walk, marksPerMove: 99, playDeg: 2 }), 0);
    expect(wantedDeg[150]! - ringDeg[150]!).toBeCloseTo(1, 3);
    expect(wantedDeg[249]! - ringDeg[249]!).toBeCloseTo(-1, 3);
  });

  test('errors at the marks have the size that was asked for', () => {
    const off = rms(endsOff({ ...walk, markErrorDeg: 2, marksPerMove: 3 }, 25, 1000));
    expect(off).toBeGreaterThan(2 * 0.91);
    expect(off).toBeLessThan(2 * 1.09);
  });
});

test('sway has the asked size, and the subject misses once for each place it stops at', () => {
  const shot = prepareShot({ ...ideal, frameRateHz: 25, swayMm: 20, seconds: 20 });
  let squares = 0;
  for (let trial = 0; trial < 100; trial++) {
    for (const vergence of oneTake(shot, trial).vergence) squares += (1 / vergence - 3000) ** 2;
  }
  const rms = Math.sqrt(squares / (100 * 500));
  expect(rms).toBeGreaterThan(18);
  expect(rms).toBeLessThan(22);
  const keyframes = [{ atS: 1, distanceMm: 3000 }, { atS: 8, distanceMm: 3000 }];
  const standing = prepareShot({ ...ideal, frameRateHz: 25, subjectMissMm: 50, keyframes });
  const { vergence } = oneTake(standing, 4);
  expect(new Set(vergence).size).toBe(1);
  expect(1 / vergence[0]!).not.toBeCloseTo(3000, 1);
});
