import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { pull } from './pull.ts';
import { type PullGiven, pullInputs } from './pull/given.ts';
import { pullByAndBy, pullJob, pullLedger, pullRunner } from './pull/job.ts';
import { binEdge, binOf } from './pull/tally.ts';
import { prepareShot } from './pull/shot.ts';
import { oneTake } from './pull/takes.ts';

/** A walk to camera on a focuser in front, pulled by marks and picture with a crew's usual errors (all figures invented). */
const walk: PullGiven = pullInputs.parse({
  seed: 11, trials: 60, seconds: 8, stepMs: 2, frameRateHz: 24,
  keyframes: [
    { atS: 0, distanceMm: 5000 }, { atS: 1, distanceMm: 5000 }, { atS: 5, distanceMm: 1500 }, { atS: 6.5, distanceMm: 1500 },
    { atS: 7, distanceMm: 3500, by: 'rack' },
  ],
  subjectMissMm: 30, swayMm: 10, swayHz: 0.7,
  scale: [
    { distanceMm: null, angleDeg: 0 }, { distanceMm: 5000, angleDeg: 40 }, { distanceMm: 3000, angleDeg: 70 }, { distanceMm: 1500, angleDeg: 140 },
    { distanceMm: 900, angleDeg: 220 },
  ],
  focalLengthMm: 85, fNumber: 2.8, focuserToSensorMm: 250, circleOfConfusionMm: 0.025,
  way: 'both', marksPerMove: 3, markErrorMm: 20, markErrorDeg: 0.5, stopErrorDeg: 0.3, timingSpreadMs: 80, lateMs: 0,
  pictureDelayMs: 70, visibleBlurMm: 0.03, reactionMs: 231, reactionSpreadMs: 25, direction: 'seen', phaseMarginDeg: 50, crossoverCapRadPerS: 5,
  remnantShare: 0.4,
  linkDelayMs: 20, handStepDeg: 0.05, motorRpm: 150, gearRatio: 2, spinUpMs: 60, motorLagMs: 15, playDeg: 0.3,
  whatIf: {
    trials: 40, pictureDelaysMs: [0, 70, 200], fNumbers: [2, 2.8, 4, 5.6], focalLengthsMm: [50, 85], speeds: [0.5, 1, 1.5], marksPerMove: [0, 3, 7],
    modes: [{ name: 'fast', pictureDelayMs: 20, visibleBlurMm: 0.04 }, { name: 'detailed', pictureDelayMs: 150, visibleBlurMm: 0.02 }],
  },
});

describe('repeating', () => {
  test('a seed gives the same bits, another seed other takes', () => {
    expect(JSON.stringify(pull(walk))).toBe(JSON.stringify(pull(walk)));
    expect(pull({ ...walk, seed: 12, whatIf: undefined }).shareSharp).not.toBe(pull({ ...walk, whatIf: undefined }).shareSharp);
  });

  property.prop([fc.array(fc.integer({ min: 1, max: 59 }), { maxLength: 4 }), fc.boolean()], { numRuns: 10 })(
    'takes shared among workers in any pieces and any order come to the same',
    (cuts, backwards) => {
      const job = pullJob({ ...walk, whatIf: undefined });
      const ends = [...new Set([0, ...cuts, 60])].sort((a, b) => a - b);
      const pieces = ends.slice(1).map((to, i) => ({ variant: -1, from: ends[i]!, to, steps: 0 }));
      const ledger = pullLedger(job);
      for (const piece of backwards ? pieces.toReversed() : pieces) ledger.enter(piece, pullRunner(job)(piece));
      expect(ledger.outcome()).toEqual(pull({ ...walk, whatIf: undefined }));
    },
  );

  test('what does not matter gains exactly nothing: every variant meets the same takes', () => {
    const byMarks = pull({ ...walk, way: 'marks' });
    const delay = byMarks.whatIf.find((curve) => curve.axis === 'pictureDelayMs')!;
    expect(new Set(delay.points.map((point) => point.shareSharp)).size).toBe(1);
    const { changes } = pull({ ...walk, way: 'stops', playDeg: 1e-9 });
    const play = changes.find((one) => one.change === 'no play')!;
    expect(Math.abs(play.gain)).toBeLessThan(1e-3);
    expect(changes.some((one) => one.change === 'half the picture delay')).toBe(false);
  });
});

describe('what comes out', () => {
  test('soft frames are counted: a motor that hardly turns leaves the second half of a rack soft', () => {
    // 10 s of 25 frames: 126 frames to the cue at 5 s, 24 within the rack that do not count, 100 soft ones after it.
    const { shareSharp, longestSoftS, takesSharpThroughout } = pull({
      ...walk, whatIf: undefined, trials: 3, seconds: 10, frameRateHz: 25, way: 'marks', swayMm: 0, subjectMissMm: 0, markErrorMm: 0,
      markErrorDeg: 0, timingSpreadMs: 0, playDeg: 0, handStepDeg: 0, motorRpm: 0.001,
      keyframes: [{ atS: 5, distanceMm: 5000 }, { atS: 6, distanceMm: 1500, by: 'rack' }],
    });
    expect(shareSharp).toBeCloseTo(126 / 226, 12);
    expect(longestSoftS).toBeCloseTo(4, 12);
    expect(takesSharpThroughout).toBe(0);
  });

  test('by marks, blur goes with 1/N, so that closing the stop is never worse and each curve says so', () => {
    const { whatIf } = pull({ ...walk, way: 'marks' });
    const shares = whatIf.find((curve) => curve.axis === 'fNumber')!.points.map((point) => point.shareSharp);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares[3]).toBeGreaterThan(shares[0]!);
    expect(whatIf.map((curve) => [curve.axis, curve.points.length])).toEqual([
      ['pictureDelayMs', 3], ['fNumber', 4], ['focalLengthMm', 2], ['speed', 3], ['marksPerMove', 3], ['mode', 2],
    ]);
  });

  test('changes are ranked, a point on a curve that is the plan equals the plan, and the model says what it is not', () => {
    const outcome = pull({ ...walk, trials: 40 });
    expect(outcome.changes.length).toBeGreaterThan(8);
    expect(outcome.changes.map((one) => one.gain)).toEqual(outcome.changes.map((one) => one.gain).toSorted((a, b) => b - a));
    const { at, ...planned } = outcome.whatIf.find((curve) => curve.axis === 'fNumber')!.points[1]!;
    expect(at).toBe(2.8);
    expect(outcome).toMatchObject(planned);
    expect(outcome.limits[0]).toContain('No published study');
    expect(outcome.limits.join(' ')).toContain('Blur carries no sign');
  });

  test('bands are the quantiles of the takes, to the width of a bin', () => {
    const given = { ...walk, whatIf: undefined, trials: 400 };
    const { bands } = pull(given);
    const shot = prepareShot(given);
    const takes = Array.from({ length: 400 }, (_, trial) => oneTake(shot, trial).blurMm);
    for (const atS of [0.5, 3, 4.5, 7.5]) {
      const band = bands.find((one) => Math.abs(one.atS - atS) < 1e-9)!;
      const blur = takes.map((take) => take[Math.round(atS * 24)]!).toSorted((a, b) => a - b);
      expect(Math.abs(band.medianMm / blur[199]! - 1)).toBeLessThan(0.1);
      expect(Math.abs(band.nineTenthsMm / blur[359]! - 1)).toBeLessThan(0.1);
      expect(band.shareSoft).toBeCloseTo(blur.filter((one) => one > 0.025).length / 400, 12);
    }
    expect(bands.some((one) => one.atS > 6.51 && one.atS < 6.99)).toBe(false);
  });

  property.prop([fc.double({ min: 1e-4, max: 900, noNaN: true })])('a blur lies between the edges of its bin', (blur) => {
    const single = Math.fround(blur);
    expect(binEdge(binOf(blur))).toBeLessThanOrEqual(single);
    expect(binEdge(binOf(blur) + 1)).toBeGreaterThan(single);
  });
});

describe('bad input is told where and why', () => {
  const [near, far] = [{ distanceMm: 900, angleDeg: 220 }, { distanceMm: 5000, angleDeg: 40 }];
  test.each<[string, Partial<Record<keyof PullGiven, unknown>>, string, string]>([
    ['marks crossing', { scale: [near, { distanceMm: 2000, angleDeg: 30 }, far] }, 'scale/1/angleDeg', 'one way'],
    ['a throw of zero', { scale: [near, { ...far, angleDeg: 220 }] }, 'scale', 'throw'],
    ['two marks for one distance', { scale: [near, far, { ...far, angleDeg: 50 }] }, 'scale/2/distanceMm', 'Two marks'],
    ['keyframes out of order', { keyframes: [{ atS: 2, distanceMm: 2000 }, { atS: 1, distanceMm: 3000 }] }, 'keyframes/1/atS', 'forward in time'],
    ['a keyframe after the end', { keyframes: [{ atS: 9, distanceMm: 2000 }] }, 'keyframes/0/atS', 'lengthen'],
    ['a keyframe off the scale', { keyframes: [{ atS: 0, distanceMm: 500 }] }, 'keyframes/0/distanceMm', '900'],
    ['a walk to infinity', { keyframes: [{ atS: 0, distanceMm: 2000 }, { atS: 1, distanceMm: null }] }, 'keyframes/1/by', 'rack'],
    ['a focuser beyond the nearest mark', { focuserToSensorMm: 1000 }, 'scale/4/distanceMm', 'focuser stands'],
    ['a lens that cannot focus so near', { focuserToSensorMm: undefined, focalLengthMm: 400 }, 'scale/4/distanceMm', 'four focal lengths'],
    ['a step longer than a frame', { stepMs: 20, frameRateHz: 100 }, 'stepMs', 'frame'],
    ['half a trial', { trials: 60.5 }, 'trials', 'whole number'],
    ['more what-if takes than takes', { trials: 10 }, 'whatIf/trials', '10'],
    ['a what-if that cannot be', { focuserToSensorMm: undefined, whatIf: { trials: 5, focalLengthsMm: [85, 300] } }, 'whatIf/focalLengthsMm/1', 'focal'],
    ['an hour in tenths of milliseconds', { seconds: 3600, stepMs: 0.1 }, 'seconds', 'steps'],
  ])('%s', (_, change, path, words) => {
    const { scale, keyframes, ...rest } = walk;
    const asJson = JSON.parse(JSON.stringify({ ...rest, scale, keyframes, ...change })) as unknown;
    const answer = pull.answer(asJson);
    if (answer.ok) throw new Error('it was answered');
    expect(answer.faults[0]).toMatchObject({ path });
    expect(answer.faults[0]!.message).toContain(words);
  });

  test('a million takes are refused at once, and as a job they show their progress and stop when asked', () => {
    const many = { ...walk, trials: 1_000_000, whatIf: undefined };
    const answer = pull.answer(JSON.parse(JSON.stringify(many)));
    expect(answer).toMatchObject({ ok: false, faults: [{ path: 'trials' }] });
    const work = pullByAndBy(pullJob(many));
    const first = work.next();
    const second = work.next();
    expect(first.done).toBe(false);
    expect(second.value).toMatchObject({ done: 2 * (first.value as { done: number }).done });
    expect((second.value as { done: number; steps: number }).done / (second.value as { steps: number }).steps).toBeLessThan(0.01);
    work.return(undefined as never);
    expect(work.next().done).toBe(true);
  });
});

const upTo = (max: number) => fc.double({ min: 0, max, noNaN: true });

property.prop([
  fc.record({
    way: fc.constantFrom('stops' as const, 'marks' as const, 'picture' as const, 'both' as const),
    direction: fc.constantFrom('seen' as const, 'known' as const), pictureDelayMs: upTo(5000), linkDelayMs: upTo(5000), swayMm: upTo(5000),
    subjectMissMm: upTo(1e5), remnantShare: upTo(100), timingSpreadMs: upTo(5000), motorRpm: fc.constantFrom(1e-6, 10, 1e9, Infinity),
    spinUpMs: fc.constantFrom(0, 1, 10_000), playDeg: fc.constantFrom(0, 5, 1e4), visibleBlurMm: fc.constantFrom(0, 0.02, 10),
    focuserToSensorMm: fc.constantFrom(undefined, 0, 899),
  }),
], { numRuns: 60 })('whatever is asked, shares are shares and the ring stays on its scale', (change) => {
  const given: PullGiven = { ...walk, ...change, whatIf: undefined, trials: 4 };
  const { shareSharp, shareSharpWorstTenth, longestSoftS, largestBlurMm } = pull(given);
  expect(shareSharpWorstTenth).toBeLessThanOrEqual(shareSharp + 1e-12);
  expect(shareSharp).toBeLessThanOrEqual(1);
  expect(shareSharpWorstTenth).toBeGreaterThanOrEqual(0);
  expect(longestSoftS).toBeLessThanOrEqual(8 + 1e-9);
  expect(Number.isFinite(largestBlurMm)).toBe(true);
  const { ringDeg } = oneTake(prepareShot(given), 1);
  expect(Math.min(...ringDeg)).toBeGreaterThanOrEqual(-given.playDeg / 2 - 1);
  expect(Math.max(...ringDeg)).toBeLessThanOrEqual(220 + given.playDeg / 2 + 1);
});
