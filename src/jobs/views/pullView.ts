import { minimumJerk } from '../../calc/focus/pull/minimumJerk.ts';
import { Asking } from '../../check/Asking.ts';
import { blurAt, depthOf, focusing } from '../../check/quantities/depthAt.ts';
import { seenBy } from '../../check/quantities/seenBy.ts';
import { shownOn } from '../../check/quantities/shownOn.ts';
import { squeezeOf } from '../../check/quantities/squeezeOf.ts';
import { videoChainDelay } from '../../check/quantities/videoChainDelay.ts';
import { visibleBlur } from '../../check/quantities/visibleBlur.ts';
import { NotEntered } from '../../check/NotEntered.ts';
import { eachViewer } from '../../check/subjects.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Shot } from '../../shoot/schema/day.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { viewOf } from './View.ts';

export type Keyframe = NonNullable<Shot['subject']>[number];

/** What to look at instead of what the shot says: while a keyframe is dragged, or to try a stop. */
export interface PullTry {
  readonly subject?: readonly Keyframe[];
  readonly tStop?: number;
  /** How late the focus follows the subject. */
  readonly lateMs?: number;
}

/** What the person who pulls sees the picture on. */
export interface PullScreen {
  readonly name: string;
  readonly delayMs: number | undefined;
  readonly visibleBlurMm: number;
  readonly shownHeightMm: number;
  readonly shownWidthMm: number;
  readonly panelPixelMm: number;
  readonly sensorHeightMm: number;
  readonly pictureLines: number;
  readonly zoom: number;
}

/** One shot over time. Distances in mm from the sensor plane; `Infinity` is possible. */
export interface PullView {
  readonly seconds: number;
  readonly keyframes: readonly Keyframe[];
  readonly method: string | undefined;
  readonly tStop: number | undefined;
  readonly atS: readonly number[];
  readonly subjectMm: readonly number[];
  readonly nearMm: readonly number[];
  readonly farMm: readonly number[];
  /** Where focus is when it follows late by `lateMs`, and the blur that gives on the sensor, vertical. */
  readonly lateMs: number;
  readonly focusMm: readonly number[];
  readonly blurMm: readonly number[];
  readonly circleMm: number;
  readonly squeeze: number;
  readonly says: string;
  readonly screen: PullScreen | undefined;
  readonly noScreen: string | undefined;
}

const SAMPLES = 240;

export function pullView(shoot: Shoot, shot: string, tried: PullTry): PullView {
  const ledger = new Ledger(withTry(shoot, shot, tried));
  const asking = new Asking(ledger);
  const subject = { shot, setup: asking.entered<string>(`shots/${shot}/setup`, 'the setup of the shot'), glass: asking.entered<string>(`shots/${shot}/glass`, 'the lens of the shot') };
  const keyframes = asking.entered<readonly Keyframe[]>(`shots/${shot}/subject`, 'where the subject is over time');
  const method = ledger.at(`shots/${shot}/method`) as string | undefined;
  const motion = (ledger.at(`shots/${shot}/motion`) as Shot['motion']) ?? 'smooth';
  const how = focusing(asking, subject);
  const screen = viewOf(() => screenOf(asking, shot, subject));
  const delayMs = screen.ok ? screen.value.delayMs : undefined;
  const lateMs = tried.lateMs ?? (method === 'picture' || method === 'both' ? (delayMs ?? 0) : 0);
  const seconds = Math.max(1, (keyframes.at(-1)?.atS ?? 0) + 1);
  const atS = Array.from({ length: SAMPLES + 1 }, (_, at) => (seconds * at) / SAMPLES);
  const subjectMm = atS.map((time) => distanceAt(keyframes, motion, time));
  const focusMm = atS.map((time) => distanceAt(keyframes, motion, time - lateMs / 1000));
  const depths = subjectMm.map((distance) => (Number.isFinite(distance) ? depthOf(how, distance) : { nearMm: Number.NaN, farMm: Infinity }));
  return {
    seconds, keyframes, method, tStop: tStopOf(ledger, shot), atS, subjectMm, nearMm: depths.map(({ nearMm }) => nearMm), farMm: depths.map(({ farMm }) => farMm), lateMs, focusMm,
    blurMm: subjectMm.map((distance, at) => (focusMm[at] === distance ? 0 : blurAt(how, { focusMm: focusMm[at] ?? distance, subjectMm: distance }))),
    circleMm: how.circleOfConfusionMm, squeeze: squeezeOf(asking, subject).value, says: how.says, screen: screen.ok ? screen.value : undefined, noScreen: screen.ok ? undefined : screen.says,
  };
}

function withTry(shoot: Shoot, id: string, { subject, tStop }: PullTry): Shoot {
  const shot = shoot.shots?.[id];
  if (shot === undefined || (subject === undefined && tStop === undefined)) return shoot;
  const changed = { ...shot, ...(subject === undefined ? {} : { subject: [...subject] }), ...(tStop === undefined ? {} : { tStop }) };
  return { ...shoot, shots: { ...shoot.shots, [id]: changed } };
}

function tStopOf(ledger: Ledger, shot: string): number | undefined {
  const stated = ledger.at(`shots/${shot}/tStop`) as number | { value: number } | undefined;
  return typeof stated === 'object' ? stated.value : stated;
}

/** Where the subject is: between keyframes a minimum-jerk move, or constant speed where the shot says so. */
function distanceAt(keyframes: readonly Keyframe[], motion: NonNullable<Shot['motion']>, timeS: number): number {
  const next = keyframes.findIndex(({ atS }) => atS > timeS);
  const [before, after] = [keyframes[next === -1 ? keyframes.length - 1 : Math.max(0, next - 1)], keyframes[next === -1 ? keyframes.length - 1 : next]];
  if (before === undefined || after === undefined) return Number.NaN;
  const part = after.atS > before.atS ? Math.min(1, Math.max(0, (timeS - before.atS) / (after.atS - before.atS))) : 0;
  const share = motion === 'constant' ? part : minimumJerk(part);
  const [from, to] = [mm(before), mm(after)];
  return share === 0 ? from : share === 1 ? to : from + (to - from) * share;
}

const mm = ({ distanceMm }: Keyframe): number => (distanceMm === 'infinity' ? Infinity : distanceMm);

/** The screen of whoever pulls this shot, else of whoever pulls in its setup. */
function screenOf(asking: Asking, shot: string, { setup, glass }: { setup: string; glass: string }): PullScreen {
  const { ledger } = asking;
  const who = ledger.at(`shots/${shot}/pulledBy`) as string | undefined;
  const viewers = eachViewer(ledger).filter((one) => one.setup === setup);
  const own = viewers.filter(({ viewer }) => ledger.at(`needs/viewers/${viewer}/who`) === who);
  const chosen = own.find(({ viewer }) => ledger.at(`needs/viewers/${viewer}/job`) === 'pull focus') ?? own[0] ?? viewers.find(({ viewer }) => ledger.at(`needs/viewers/${viewer}/job`) === 'pull focus');
  const subject = chosen === undefined ? undefined : { ...chosen, glass };
  const seen = subject === undefined ? undefined : seenBy(ledger, subject);
  if (subject === undefined || seen === undefined) throw new NotEntered([{ path: 'needs/viewers', says: 'the screen of whoever pulls' }]);
  const shown = shownOn(asking, subject, seen);
  const blur = visibleBlur(asking, subject);
  if (blur === undefined || shown.pictureLines === undefined) throw new NotEntered([{ path: 'needs/viewers', says: `a picture on ${seen.screen.name}` }]);
  const delay = viewOf(() => videoChainDelay(ledger, subject)?.value);
  return {
    name: `${seen.name}, ${seen.screen.name}`, delayMs: delay.ok ? delay.value : undefined, visibleBlurMm: blur.blurMm, shownHeightMm: shown.heightMm, shownWidthMm: shown.widthMm,
    panelPixelMm: shown.panelPixelMm, sensorHeightMm: shown.sensorHeightMm, pictureLines: shown.pictureLines, zoom: blur.zoom,
  };
}

