import { NoAnswer, calculator } from '../calculator.ts';
import { pullInputs } from './pull/given.ts';
import { pullByAndBy, pullJob } from './pull/job.ts';
import type { PullOutcome } from './pull/outcome.ts';

/** More steps than this take more than some seconds; the job (`pull/job.ts`) runs them piece by piece, with progress and a stop. */
const MOST_STEPS_AT_ONCE = 300_000_000;

/** One shot pulled many times over: how much of it is sharp, and what would help. The engine is in `pull/`; long work runs as a job. */
export const pull = calculator(
  {
    name: 'focus.pull',
    sentence: 'Simulates many takes of one shot, subject, camera, puller, link, motor and lens, and counts how sharp they are.',
    inputs: pullInputs,
    results: {
      shareSharp: 'share of the judged frames that are sharp, mean over the takes',
      shareSharpWorstTenth: 'the same, mean over the worst tenth of the takes',
      takesSharpThroughout: 'share of the takes without a soft frame',
      longestSoftS: 's, longest soft stretch of a take, mean',
      longestSoftWorstTenthS: 's, the same over the tenth of the takes where it is longest',
      largestBlurMm: 'mm on the sensor, largest blur of a take, mean',
      largestBlurWorstTenthMm: 'mm, the same over the tenth of the takes where it is largest',
      standardError: 'of shareSharp, from the number of takes alone',
      wholeDelayMs: 'ms round the loop of the puller: picture, half a frame, reaction, link, lag of the motor',
      crossoverRadPerS: 'rad/s, gain of the puller who follows the picture; a steady turn is followed 1/crossover seconds late',
      wantedDegPerS: 'deg/s, fastest turn of the ring that the plan asks for',
      motorDegPerS: 'deg/s, fastest turn of the ring that the motor gives; null: by hand',
      bands: 'list over time: {atS, distanceMm as planned (null: infinity), tenthMm, medianMm, nineTenthsMm of blur, shareSoft}; racks left out',
      whatIf: 'list of curves, {axis, points}; each point `at` a value, with the summary of its takes',
      changes: 'list of single changes, best first: {change, shareSharp, gain in shareSharp, its standardError, longestSoftS}',
      limits: 'what the model does not know, in sentences to be shown beside the numbers',
    },
    formula: 'Subject: keyframes by minimum jerk 10x³ − 15x⁴ + 6x⁵ or constant speed, with a miss at each place, plus sway. '
      + 'Picture: e = wanted − ring in one delayed frame, 0 while its blur ≤ visible; du/dt = ωc·e·(1 + remnant); ωc = (π/2 − φ)/τ, capped. '
      + 'Blur carries no sign: with direction "seen" the sign of e is inferred. If the picture got softer (by 30 %) e grew, else it shrank; '
      + 'which way it went is known from the turn of the hand and, where approach is noticed (3 %/s), from the motion of the subject; '
      + 'where neither tells it is guessed, and turned back if that made it worse (hunting). With "known" it is given: the textbook\'s bound. '
      + 'Marks: through the marks in the order they are met, between them in proportion to the distance covered; errors of measuring and '
      + 'landing at each, timing at each end of a move. Stops: the two extremes are hard. '
      + 'Drive: command rounded to the hand\'s step, delayed by the link; v follows (command − m)/lag within speed, acceleration and braking '
      + 'distance; the ring is dragged through the play. Blur (f²/N)·|1/s − 1/d|·s/(s − f), distances from the lens, '
      + 'or for a focuser in front (f²/N)·|1/s − 1/d|, from the focuser',
    source: 'McRuer & Jex 1967 (crossover model); Flash & Hogan 1985 (minimum jerk); Woods et al. 2015 (reaction 231 ms). '
      + 'No published study concerns focus pulling itself: see `limits`',
    examples: [
      {
        given: {
          seed: 1, trials: 20, seconds: 3, stepMs: 2, frameRateHz: 25,
          keyframes: [{ atS: 0, distanceMm: 5000 }, { atS: 1, distanceMm: 5000 }, { atS: 1.5, distanceMm: 2000, by: 'rack' }],
          subjectMissMm: 0, swayMm: 0, swayHz: 0.7,
          scale: [
            { distanceMm: null, angleDeg: 0 }, { distanceMm: 5000, angleDeg: 20 }, { distanceMm: 2000, angleDeg: 60 },
            { distanceMm: 800, angleDeg: 130 },
          ],
          focalLengthMm: 50, fNumber: 2, circleOfConfusionMm: 0.025,
          way: 'marks', marksPerMove: 0, markErrorMm: 0, markErrorDeg: 0, stopErrorDeg: 0, timingSpreadMs: 0, lateMs: 0,
          pictureDelayMs: 29, visibleBlurMm: 0.03, reactionMs: 231, reactionSpreadMs: 0, direction: 'seen', phaseMarginDeg: 40,
          crossoverCapRadPerS: 6, remnantShare: 0.4,
          linkDelayMs: 10, handStepDeg: 0, motorRpm: 300, gearRatio: 3, spinUpMs: 30, motorLagMs: 10, playDeg: 0,
        },
        gives: {
          shareSharp: '1.000', longestSoftS: '0.000', takesSharpThroughout: '1.000', largestBlurMm: '0.000',
          wholeDelayMs: '300', crossoverRadPerS: '2.9089', wantedDegPerS: '150.0', motorDegPerS: '600.0',
        },
        source: 'without errors and within the limits of the drive a rack by marks is exact; 40° at 0.3 s give 2.9089 rad/s (crossover model, '
          + 'derived); a minimum-jerk rack of 40° in 0.5 s peaks at 1.875 times 80 deg/s (Flash & Hogan)',
      },
    ],
  },
  (given): PullOutcome => {
    const job = pullJob(given);
    if (job.steps > MOST_STEPS_AT_ONCE) {
      throw new NoAnswer(
        'trials',
        `Found ${job.steps} time steps in all; one answer runs at most ${MOST_STEPS_AT_ONCE}. `
          + 'Take fewer trials or a longer step, or run it as a job.',
      );
    }
    const work = pullByAndBy(job);
    for (;;) {
      const { done, value } = work.next();
      if (done === true) return value;
    }
  },
);
