import { minimumJerk } from '../../../calc/focus/pull/minimumJerk.ts';
import type { PullGiven } from '../../../calc/focus/pull/given.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { shotName } from '../../quantities/shotName.ts';
import { eachPulled } from '../../quantities/eachDriven.ts';
import { blurAt, focusing } from '../../quantities/depthAt.ts';
import { outOfReach } from '../../quantities/focusReach.ts';
import { modeEdit } from '../../quantities/modeEdit.ts';
import { type FollowLoop, followLoop } from '../../quantities/followLoop.ts';
import { pullersView } from '../../quantities/pullersView.ts';
import { type ShotRing, shotRing } from '../../quantities/ringAngle.ts';
import { shotMoves } from '../../quantities/shotMoves.ts';
import { transmitterModes } from '../../quantities/transmitterModes.ts';
import { question } from '../../question.ts';
import type { ShotSubject } from '../../subjects.ts';

export const follow = question({
  id: 'focus.follow',
  asks: 'Can the eye follow this move on this picture?',
  kind: 'immediate',
  explains:
    'For shots that are pulled by the picture alone. Whoever follows a moving subject by eye trails it by a time that the whole delay round the loop sets: picture, half a frame, reaction, hand unit, motor. Kept steady, with a margin against ' +
    'hunting, that time is one over the crossover. The blur that trailing makes at the fastest moment of the move, against what counts as sharp; and how late the picture might be for it to hold. ' +
    'It is a bound for the mean, without slips of the hand: the simulated pull adds those. Foresight, tape and a known actor beat it; nothing is published on focus pulling itself.',
  sources: ['McRuer & Jex 1967: crossover model', 'Woods et al. 2015: reaction'],
  subjects: (ledger) => eachPulled(ledger).filter(({ shot }) => ledger.at(`shots/${shot}/method`) === 'picture'),
  ask: (asking, subject) => {
    if (outOfReach(asking, subject)) return null;
    const loop = followLoop(asking, subject);
    if (loop === undefined) return null;
    const { circleOfConfusionMm } = focusing(asking, subject);
    const blurAtDelay = trailingBlur(asking, subject, loop);
    if (blurAtDelay === undefined) return null;
    const { pictureDelayMs, visibleBlurMm } = loop;
    const blur = blurAtDelay(pictureDelayMs);
    const latest = latestPicture(blurAtDelay, circleOfConfusionMm);
    const shot = shotName(asking, subject);
    const never = latest === undefined;
    return judgeRatio({
      needs: { amount: { value: blur, unit: 'mm' }, from: `blur while trailing the move by ${printAmount({ value: loop.trailSWith(pictureDelayMs), unit: 's' })}` },
      has: { amount: { value: circleOfConfusionMm, unit: 'mm' }, from: 'blur that counts as sharp' },
      says: {
        holds: `${shot} can be followed by eye.`,
        tight: `${shot} can only just be followed by eye.`,
        fails: never ? `${shot} is too quick to follow by eye alone, however soon the picture comes: it wants marks.` : `${shot} cannot be followed by eye on a picture this late.`,
      },
      steps: [
        { says: 'picture', amount: { value: pictureDelayMs, unit: 'ms' } },
        { says: 'round the whole loop', amount: { value: loop.delayMsWith(pictureDelayMs), unit: 'ms' } },
        { says: 'the smallest blur seen on this screen', amount: { value: visibleBlurMm, unit: 'mm' } },
        ...(never ? [{ says: 'even a picture without delay would come too late' }] : [{ says: 'the picture may be as late as', amount: { value: latest, unit: 'ms' as const } }]),
      ],
      mends: blur > circleOfConfusionMm ? mends(asking, subject, { pictureDelayMs, circleMm: circleOfConfusionMm, blurAtDelay }) : [],
      notes: visibleBlurMm > circleOfConfusionMm ? ['This screen does not show blur before it counts as soft: see whether focus can be judged on it.'] : [],
    });
  },
});

/** The largest blur of trailing, for a picture so late; `undefined` where nobody moves, or only racks are made: those are not followed. */
function trailingBlur(asking: Asking, subject: ShotSubject, { trailSWith }: FollowLoop): ((pictureDelayMs: number) => number) | undefined {
  const ring = shotRing(asking, subject);
  const how = focusing(asking, subject);
  const moments = momentsOf(shotMoves(asking, subject.shot), ring);
  if (moments.length === 0) return undefined;
  const ends = [ring.scale.angleAt(ring.scale.farMm), ring.scale.angleAt(ring.scale.nearMm)];
  return (pictureDelayMs) => {
    const lag = trailSWith(pictureDelayMs);
    return Math.max(...moments.map(({ distanceMm, angleDeg, degPerS, turnedDeg }) => {
      // It cannot trail by more than the move has turned so far.
      const behind = Math.sign(degPerS) * Math.min(Math.abs(degPerS) * lag, turnedDeg);
      const stands = Math.min(Math.max(angleDeg - behind, Math.min(...ends)), Math.max(...ends));
      return blurAt(how, { focusMm: ring.distanceAt(stands), subjectMm: distanceMm });
    }));
  };
}

interface Moment {
  readonly distanceMm: number;
  readonly angleDeg: number;
  readonly degPerS: number;
  readonly turnedDeg: number;
}

const PARTS = 40; // of each move: the peaks are flat

function momentsOf(keyframes: PullGiven['keyframes'], { angleAt }: ShotRing): Moment[] {
  return keyframes.slice(1).flatMap((end, at) => {
    const start = keyframes[at];
    if (start === undefined || end.by === 'rack' || start.distanceMm === end.distanceMm) return [];
    const shareAt = (part: number) => (end.by === 'steady' ? part : minimumJerk(part));
    const placeAt = (part: number) => start.distanceMm + (end.distanceMm - start.distanceMm) * shareAt(part);
    const from = angleAt(start.distanceMm);
    return Array.from({ length: PARTS }, (_, k): Moment => {
      const [before, after] = [k / PARTS, (k + 1) / PARTS];
      const distanceMm = placeAt((before + after) / 2);
      const angleDeg = angleAt(distanceMm);
      const degPerS = ((angleAt(placeAt(after)) - angleAt(placeAt(before))) * PARTS) / (end.atS - start.atS);
      return { distanceMm, angleDeg, degPerS, turnedDeg: Math.abs(angleDeg - from) };
    });
  });
}

/** How late the picture may be for the trailing blur to stay sharp; `undefined` where no picture is soon enough. */
function latestPicture(blurAtDelay: (pictureDelayMs: number) => number, circleMm: number): number | undefined {
  if (blurAtDelay(0) > circleMm) return undefined;
  let [fine, late] = [0, 5000];
  if (blurAtDelay(late) <= circleMm) return late;
  for (let halving = 0; halving < 24; halving += 1) {
    const middle = (fine + late) / 2;
    if (blurAtDelay(middle) <= circleMm) fine = middle;
    else late = middle;
  }
  return fine;
}

function mends(
  asking: Asking, subject: ShotSubject, { pictureDelayMs, circleMm, blurAtDelay }: { pictureDelayMs: number; circleMm: number; blurAtDelay: (pictureDelayMs: number) => number },
): Mend[] {
  const viewer = pullersView(asking, subject)?.viewer;
  const quicker = (viewer === undefined ? [] : transmitterModes(asking, viewer))
    .filter((mode) => !mode.now && mode.pictureDelayMs < pictureDelayMs && blurAtDelay(mode.pictureDelayMs) <= circleMm)
    .map((mode): Mend => ({
      says: `The mode ${mode.name} on ${mode.transmitter.name}`, edit: modeEdit(asking.ledger, mode.transmitter, mode.id, mode.name), use: blurAtDelay(mode.pictureDelayMs) / circleMm,
      costs: `the picture comes ${printNumber(pictureDelayMs - mode.pictureDelayMs, 2)} ms sooner, for everybody on it`,
    }));
  const edit = { says: 'pulled by marks and picture', patches: [{ op: 'replace' as const, path: `shots/${subject.shot}/method`, value: 'both' }] };
  return [...quicker, { says: 'Pull it by marks, and correct by the picture', edit, costs: 'a rehearsal, tape, and people who meet their places' }];
}
