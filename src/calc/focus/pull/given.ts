import * as z from 'zod';
import { between, inputs, nonNegative, oneOf, orInfinity, positive, text, whole } from '../../inputs.ts';

const keyframe = z.strictObject({
  atS: nonNegative('s', 'when the subject is there'),
  distanceMm: orInfinity(positive('mm', 'distance from the sensor plane; null: infinity, which only a rack reaches')),
  by: oneOf(
    ['smooth', 'steady', 'rack'],
    'how it got there from the keyframe before: a minimum-jerk move, constant speed, or a rack (focus is handed over to another subject '
      + 'during that time, which is not judged); absent: smooth',
  ).optional(),
});

const mark = z.strictObject({
  distanceMm: orInfinity(positive('mm', 'distance from the sensor plane; null: the infinity mark')),
  angleDeg: z.number().meta({ unit: 'deg', description: 'ring angle at that distance' }),
});

const mode = z.strictObject({
  name: text('what the mode is called'),
  pictureDelayMs: between(0, 5000, 'ms', 'picture delay in that mode'),
  visibleBlurMm: nonNegative('mm', 'smallest blur the puller sees in that mode'),
});

const points = <T extends z.ZodType<number>>(kind: T) => z.array(kind).optional();

const whatIf = z.strictObject({
  trials: whole(1, 'count', 'takes for each variant; no more than `trials`'),
  pictureDelaysMs: points(between(0, 5000, 'ms', 'picture delay')),
  fNumbers: points(positive('ratio', 'f-number')),
  focalLengthsMm: points(positive('mm', 'focal length; the ring scale is kept')),
  speeds: points(between(0.1, 10, 'ratio', 'speed of everything in the shot, as a multiple of the planned one')),
  marksPerMove: points(between(0, 100, 'count', 'marks between the ends of each move')),
  modes: z.array(mode).optional(),
});

/** Everything a simulated shot is made of. Distances run from the sensor plane, angles at the focus ring. */
export const pullInputs = inputs({
  seed: between(0, 4294967295, 'count', 'start of the random numbers, a whole number: the same seed gives the same takes'),
  trials: between(1, 1_000_000, 'count', 'takes to simulate, a whole number'),
  seconds: between(0.1, 3600, 's', 'length of the shot'),
  stepMs: between(0.1, 20, 'ms', 'longest time step; shortened so that a whole number of steps fit a frame'),
  frameRateHz: between(1, 1000, 'Hz', 'frames recorded a second; blur is judged and seen frame by frame'),

  keyframes: z.array(keyframe).min(1).meta({
    unit: '', description: 'where the subject is when, in order; it stands before the first and after the last',
  }),
  subjectMissMm: nonNegative('mm', 'rms by which the subject misses each place along the axis, anew each time it stops there'),
  swayMm: nonNegative('mm', 'rms sway of the camera along the axis; 0: tripod'),
  swayHz: between(0, 20, 'Hz', 'centre frequency of the sway'),

  scale: z.array(mark).min(2).meta({ unit: '', description: 'the ring scale; its outermost marks are its end stops' }),
  focalLengthMm: positive('mm', 'focal length; of an anamorphic lens the longer, vertical one'),
  fNumber: positive('ratio', 'f-number (not the T-number)'),
  focuserToSensorMm: nonNegative('mm', 'distance of the focuser').optional().meta({
    unit: 'mm',
    description: 'of a variable diopter in front (taking lens at infinity): its distance from the sensor plane; absent: the lens itself moves',
  }),
  circleOfConfusionMm: positive('mm', 'largest blur on the sensor that still counts as sharp'),

  way: oneOf(
    ['stops', 'marks', 'picture', 'both'],
    'how it is pulled: between two hard stops, by known marks, by the picture alone, or by marks corrected by the picture',
  ),
  marksPerMove: between(0, 100, 'count', 'known marks between the ends of each move, evenly spaced on the ring; the ends are marks too'),
  markErrorMm: nonNegative('mm', 'rms error of a measured distance, the same each time the mark is used'),
  markErrorDeg: nonNegative('deg', 'rms error of landing on a mark, at the ring'),
  stopErrorDeg: nonNegative('deg', 'rms error of setting a hard stop, at the ring'),
  timingSpreadMs: between(0, 5000, 'ms', 'rms error of when a move is begun and ended'),
  lateMs: between(-5000, 5000, 'ms', 'mean lateness of the hand: a reaction time for an unrehearsed cue, 0 for a rehearsed one'),

  pictureDelayMs: between(0, 5000, 'ms', 'from the light of a frame to its picture on the screen of the puller, as traced or measured'),
  visibleBlurMm: nonNegative('mm', 'smallest blur on the sensor that this viewer sees on this screen (video.visibleBlur)'),
  reactionMs: between(0, 2000, 'ms', 'from seeing to the hand moving; simple visual reaction 231 ms (Woods et al. 2015)'),
  reactionSpreadMs: between(0, 1000, 'ms', 'rms spread of it from take to take'),
  direction: oneOf(['seen', 'known'], 'whether the puller has to find out which way it is soft (seen) or is told (known: the bound of the textbook)'),
  phaseMarginDeg: between(0, 89, 'deg', 'phase margin the puller keeps; 40 to 60 is usual in tracking'),
  crossoverCapRadPerS: between(0.01, 50, 'rad/s', 'fastest crossover a hand manages, however short the delay'),
  remnantShare: nonNegative('share', 'rms noise of the hand as a share of the error it corrects'),

  linkDelayMs: between(0, 5000, 'ms', 'from the hand unit to the motor'),
  handStepDeg: nonNegative('deg', 'smallest step of the hand unit, at the ring; 0: none'),
  motorRpm: orInfinity(positive('rpm', 'motor speed under the torque of this ring; null: the hand turns the ring itself')),
  gearRatio: positive('ratio', 'teeth of the ring over teeth on the motor'),
  spinUpMs: between(0, 10_000, 'ms', 'from rest to full motor speed'),
  motorLagMs: between(0, 5000, 'ms', 'time constant with which the motor follows its command'),
  playDeg: nonNegative('deg', 'free play between motor and focus, at the ring, end to end'),

  whatIf: whatIf.optional().meta({ unit: '', description: 'other values to try, one at a time, on the same takes; absent: none' }),
});

export type PullGiven = z.output<typeof pullInputs>;
export type PullWay = PullGiven['way'];
