import type { PullGiven, PullWay } from '../../calc/focus/pull/given.ts';
import type { Shot } from '../../shoot/schema/day.ts';
import { focus } from '../../standards/assumptions/focus.ts';
import type { Asking } from '../Asking.ts';
import type { ShotSubject } from '../subjects.ts';
import { controlDelay } from './controlDelay.ts';
import { type Focusing, focusing } from './depthAt.ts';
import { type PictureSeen, motorLagMs, needsPicture, pictureSeen } from './followLoop.ts';
import { type HandWheel, edgeToRingDeg, handWheel, stepDegOf } from './handWheel.ts';
import { pullersView } from './pullersView.ts';
import { type ShotRing, shotRing } from './ringAngle.ts';
import { ringDrive, runOf } from './ringDrive.ts';
import { ringPlay } from './ringPlay.ts';
import { focusRing } from './focusRing.ts';
import { shootFigure } from './shootFigures.ts';
import { shotMoves } from './shotMoves.ts';
import { RMS_OF_SWAY, swayOf } from './swayOf.ts';
import { type ModeSeen, transmitterModes } from './transmitterModes.ts';

/** A shot as the pull is simulated, and what was made of the shoot for it. */
export interface PullPlan {
  readonly given: PullGiven;
  readonly way: PullWay;
  /** Whether a picture reaches who pulls; without one only marks and stops can be tried. */
  readonly sees: boolean;
  readonly modes: readonly ModeSeen[];
  /** How the ring is turned and seen, for the working. */
  readonly says: readonly string[];
}

/** `undefined` where the picture that the plan needs does not arrive, or a hand does not reach the motor: other questions say so. */
export function pullGiven(asking: Asking, subject: ShotSubject, { seed, trials }: { seed: number; trials: number }): PullPlan | undefined {
  const seen = pictureSeen(asking, subject);
  const way = wayOf(asking, subject, seen);
  if (seen === undefined && (way === 'picture' || way === 'both')) return needsPicture(asking, subject);
  const wheel = handWheel(asking, subject);
  const turn = turning(asking, subject, wheel);
  if (turn === undefined) return undefined;
  const keyframes = shotMoves(asking, subject.shot);
  const ring = shotRing(asking, subject);
  const given: PullGiven = {
    seed, trials, seconds: lengthS(keyframes), stepMs: Math.min(2, 1000 / frameRateOf(asking, subject)), frameRateHz: frameRateOf(asking, subject),
    keyframes, subjectMissMm: missOf(asking, subject), ...sway(asking, subject),
    scale: marksAsTaped(ring), ...optics(focusing(asking, subject)),
    way, marksPerMove: marksBetween(asking, subject.shot, keyframes), ...handErrors(asking, subject, wheel),
    ...(seen ?? { pictureDelayMs: 0, visibleBlurMm: 1 }), ...eye(asking),
    ...turn.given, playDeg: ringPlay(asking, subject).value,
  };
  return { given, way, sees: seen !== undefined, modes: modesSeen(asking, subject), says: turn.says };
}

function modesSeen(asking: Asking, subject: ShotSubject): ModeSeen[] {
  const viewer = pullersView(asking, subject)?.viewer;
  return viewer === undefined ? [] : transmitterModes(asking, viewer);
}

/** As the shot states it; else by marks and picture, or by marks alone where no picture is seen. */
function wayOf({ ledger }: Asking, { shot }: ShotSubject, seen: PictureSeen | undefined): PullWay {
  return (ledger.at(`shots/${shot}/method`) as Shot['method']) ?? (seen === undefined ? 'marks' : 'both');
}

const frameRateOf = ({ ledger }: Asking, { setup }: ShotSubject): number => ledger.at(`setups/${setup}/frameRateHz`) as number;

/** To a second after the last keyframe; a subject that stays is watched for some seconds. */
const lengthS = (keyframes: PullGiven['keyframes']): number => Math.max(6, (keyframes.at(-1)?.atS ?? 0) + 1);

/** Blur behind a close-up lens goes by the distances before it, as behind a focuser in front: it stands where these start. */
function optics(how: Focusing): Pick<PullGiven, 'focalLengthMm' | 'fNumber' | 'circleOfConfusionMm' | 'focuserToSensorMm'> {
  const { focalLengthMm, fNumber, circleOfConfusionMm } = how;
  const inFront = how.form === 'front focuser' ? how.offsetMm : how.closeUp?.toSensorMm;
  return { focalLengthMm, fNumber, circleOfConfusionMm, ...(inFront === undefined ? {} : { focuserToSensorMm: inFront }) };
}

function marksAsTaped({ scale, distanceAt, closeUp }: ShotRing): PullGiven['scale'] {
  return scale.marks.map(({ distanceMm, angleDeg }) => ({ distanceMm: closeUp === undefined ? distanceMm : distanceAt(angleDeg), angleDeg }));
}

function sway(asking: Asking, subject: ShotSubject): Pick<PullGiven, 'swayMm' | 'swayHz'> {
  return { swayMm: (swayOf(asking, subject)?.value ?? 0) * RMS_OF_SWAY, swayHz: asking.assume(focus.swayHz).value };
}

/** As the shot states it, else as people usually do. */
const missOf = (asking: Asking, { shot }: ShotSubject): number => (shootFigure(asking.ledger, `shots/${shot}/missMm`) ?? asking.assume(focus.subjectMissMm)).value;

/** Marks that the shot lists between the ends of its moves; of several moves, those of the one with fewest. */
function marksBetween({ ledger }: Asking, shot: string, keyframes: PullGiven['keyframes']): number {
  const marks = (ledger.at(`shots/${shot}/marksMm`) ?? []) as readonly number[];
  const counts = keyframes.slice(1).flatMap(({ distanceMm, by }, at) => {
    const from = keyframes[at]?.distanceMm ?? distanceMm;
    if (by === 'rack' || from === distanceMm) return [];
    return [marks.filter((mark) => mark > Math.min(from, distanceMm) && mark < Math.max(from, distanceMm)).length];
  });
  return counts.length === 0 ? 0 : Math.min(...counts);
}

function handErrors(asking: Asking, subject: ShotSubject, wheel: HandWheel | undefined): Pick<PullGiven, 'markErrorMm' | 'markErrorDeg' | 'stopErrorDeg' | 'timingSpreadMs' | 'lateMs'> {
  const degPerMm = wheel === undefined ? ringDegPerMm(asking, subject) : edgeToRingDeg(asking, wheel, 1);
  return {
    markErrorMm: asking.assume(focus.tapeErrorMm).value,
    markErrorDeg: asking.assume(focus.landOnMarkMm).value * degPerMm,
    stopErrorDeg: asking.assume(focus.stopErrorMm).value * degPerMm,
    timingSpreadMs: asking.assume(focus.timingSpreadMs).value,
    lateMs: 0,
  };
}

/** Of a ring that is turned by hand. */
function ringDegPerMm(asking: Asking, subject: ShotSubject): number {
  const diameter = focusRing(asking, subject).part.figure('focus/ringDiameterMm') ?? asking.assume(focus.wheelDiameterMm);
  return 360 / (Math.PI * diameter.value);
}

function eye(asking: Asking): Pick<PullGiven, 'reactionMs' | 'reactionSpreadMs' | 'direction' | 'phaseMarginDeg' | 'crossoverCapRadPerS' | 'remnantShare'> {
  return {
    reactionMs: asking.assume(focus.reactionMs).value, reactionSpreadMs: asking.assume(focus.reactionSpreadMs).value, direction: 'seen',
    phaseMarginDeg: asking.assume(focus.phaseMarginDeg).value, crossoverCapRadPerS: asking.assume(focus.crossover).value, remnantShare: asking.assume(focus.remnant).value,
  };
}

type Turning = Pick<PullGiven, 'linkDelayMs' | 'handStepDeg' | 'motorRpm' | 'gearRatio' | 'spinUpMs' | 'motorLagMs'>;

/** A motor under the ring's torque, or a hand that is as quick as it likes; `undefined` where the motor stands still. */
function turning(asking: Asking, subject: ShotSubject, wheel: HandWheel | undefined): { given: Turning; says: string[] } | undefined {
  const found = ringDrive(asking, subject);
  const handStepDeg = wheel === undefined ? 0 : stepDegOf(wheel);
  if (found === undefined) {
    const says = wheel === undefined ? 'turned by hand on the ring' : `turned by ${wheel.piece.name}`;
    return { given: { linkDelayMs: 0, handStepDeg, motorRpm: Infinity, gearRatio: 1, spinUpMs: 0, motorLagMs: 0 }, says: [says] };
  }
  const run = runOf(found);
  if (wheel === undefined || run.torqueUse >= 1) return undefined;
  const { name } = found.motor.piece;
  return {
    given: {
      linkDelayMs: controlDelay(asking, subject).value, handStepDeg, motorRpm: run.ringRpm * run.ratio, gearRatio: run.ratio,
      spinUpMs: asking.assume(focus.spinUpMs).value, motorLagMs: motorLagMs(asking, subject),
    },
    says: [`${wheel.piece.name} turns ${found.ring.name} through ${name}`],
  };
}
