import type { PullWay } from '../../calc/focus/pull/given.ts';
import type { Change, PullOutcome } from '../../calc/focus/pull/outcome.ts';
import type { Edit } from '../../shoot/edit/Edit.ts';
import { WHOLE_STOPS } from '../../standards/wholeStops.ts';
import { printNumber } from '../../units/print.ts';
import type { Mend } from '../answer.ts';
import type { Asking } from '../Asking.ts';
import type { ShotSubject } from '../subjects.ts';
import { shotStop } from './lightThrough.ts';
import { modeEdit } from './modeEdit.ts';
import type { PullPlan } from './pullGiven.ts';
import { shotRing } from './ringAngle.ts';

const MOST = 6;
/** A gain must stand out of the chance of the takes, and be worth a sentence. */
const LEAST_GAIN = 0.01;
const STANDARD_ERRORS = 2;

/** The single changes that help, the best first, each with what it leads to on the same takes. */
export function changeMends(asking: Asking, subject: ShotSubject, plan: PullPlan, { changes }: PullOutcome, wished: number): Mend[] {
  return changes
    .filter(({ gain, standardError }) => gain > Math.max(LEAST_GAIN, STANDARD_ERRORS * standardError))
    .filter(({ change }) => plan.sees || !change.includes('picture'))
    .slice(0, MOST)
    .map((change) => mendOf(asking, subject, plan, change, wished));
}

function mendOf(asking: Asking, subject: ShotSubject, plan: PullPlan, { change, shareSharp, gain }: Change, wished: number): Mend {
  const edit = editOf(asking, subject, plan, change);
  const costs = COSTS.find(([starts]) => change.startsWith(starts))?.[1];
  return {
    says: `${cureOf(change)} (${printNumber(shareSharp * 100, 2)} % sharp, ${printNumber(gain * 100, 2)} points more)`,
    use: (1 - shareSharp) / (1 - wished),
    ...(edit === undefined ? {} : { edit }),
    ...(costs === undefined ? {} : { costs }),
  };
}

/** A change as something to do. */
function cureOf(change: string): string {
  return CURES[change] ?? (change.startsWith('mode: ') ? `Set the transmitter to ${change.slice('mode: '.length)}` : `${change[0]?.toUpperCase() ?? ''}${change.slice(1)}`);
}

const CURES: Readonly<Record<string, string>> = {
  'one stop less open': 'Close the stop by one',
  'a focal length a quarter shorter': 'Take a focal length a quarter shorter',
  'everything a quarter slower': 'Play everything a quarter slower',
  'two more marks in each move': 'Lay two more marks in each move',
  'half the picture delay': 'Halve the delay of the picture',
  'half the blur visible: a larger or nearer screen': 'Make half the blur visible: a larger or nearer screen, or a punch-in',
  'a motor twice as fast': 'Take a motor twice as fast',
  'no play': 'Take out the play',
  'on a tripod': 'Put the camera on a tripod',
  'pulled between two hard stops': 'Pull it between two hard stops',
  'pulled by known marks': 'Pull it by known marks',
  'pulled by the picture alone': 'Pull it by the picture alone',
  'pulled by marks and picture': 'Pull it by marks and picture',
};

const COSTS: readonly (readonly [string, string])[] = [
  ['one stop less open', 'a stop more light or sensitivity'],
  ['a focal length', 'another frame, or another place for the camera'],
  ['everything a quarter slower', 'another tempo: the director’s to say'],
  ['two more marks', 'more tape, and a rehearsal'],
  ['mode:', 'everybody on this transmitter gets the same'],
  ['pulled by the picture', 'no marks to fall back on'],
  ['pulled by known marks', 'a rehearsal, and people who meet their places'],
  ['pulled by marks and picture', 'a rehearsal, and people who meet their places'],
  ['on a tripod', 'another feel'],
];

function editOf(asking: Asking, { shot, setup, glass }: ShotSubject, plan: PullPlan, change: string): Edit | undefined {
  const path = `shots/${shot}`;
  if (change === 'one stop less open') {
    const tStop = wholeStopNear(shotStop(asking, shot) * Math.SQRT2);
    return { says: `shot at T${tStop}`, patches: [{ op: 'replace', path: `${path}/tStop`, value: tStop }] };
  }
  const way = WAYS[change];
  if (way !== undefined) return { says: change, patches: [{ op: 'add', path: `${path}/method`, value: way }] };
  const mode = plan.modes.find(({ name }) => change === `mode: ${name}`);
  if (mode !== undefined) return modeEdit(asking.ledger, mode.transmitter, mode.id, mode.name);
  if (change === 'two more marks in each move') return { says: change, patches: [{ op: 'add', path: `${path}/marksMm`, value: moreMarks(asking, { shot, setup, glass }, plan) }] };
  return undefined;
}

const WAYS: Readonly<Record<string, PullWay>> = {
  'pulled between two hard stops': 'stops', 'pulled by known marks': 'marks', 'pulled by the picture alone': 'picture', 'pulled by marks and picture': 'both',
};

const wholeStopNear = (tStop: number): number => WHOLE_STOPS.find((whole) => Math.abs(whole / tStop - 1) < 0.03) ?? Math.round(tStop * 10) / 10;

const TO_THE_CM = 10;

/** Marks at even turns of the ring, ends and two more than now, to a centimetre. */
function moreMarks(asking: Asking, subject: ShotSubject, { given }: PullPlan): number[] {
  const { angleAt, distanceAt } = shotRing(asking, subject);
  const between = given.marksPerMove + 2;
  const marks = given.keyframes.slice(1).flatMap(({ distanceMm, by }, at) => {
    const start = given.keyframes[at]?.distanceMm ?? distanceMm;
    if (by === 'rack' || start === distanceMm || !Number.isFinite(start + distanceMm)) return [distanceMm];
    const [from, to] = [angleAt(start), angleAt(distanceMm)];
    return Array.from({ length: between + 2 }, (_, k) => distanceAt(from + ((to - from) * k) / (between + 1)));
  });
  const rounded = marks.filter(Number.isFinite).map((mm) => Math.round(mm / TO_THE_CM) * TO_THE_CM);
  return [...new Set(rounded)].toSorted((a, b) => b - a);
}
