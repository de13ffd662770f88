import { NoAnswer } from '../../calculator.ts';
import { checkShot } from './checkShot.ts';
import type { PullGiven, PullWay } from './given.ts';

export type Axis = 'pictureDelayMs' | 'fNumber' | 'focalLengthMm' | 'speed' | 'marksPerMove' | 'mode';

/** The shot with one thing changed. */
export interface Variant {
  /** The curve it is a point of; absent for a single change that is ranked. */
  readonly axis: Axis | undefined;
  /** Where on the curve, or what is changed. */
  readonly at: number | string;
  readonly given: PullGiven;
}

/** The points of all what-if curves, then the single changes that are ranked. */
export function variantsOf(given: PullGiven): Variant[] {
  if (given.whatIf === undefined) return [];
  const { pictureDelaysMs = [], fNumbers = [], focalLengthsMm = [], speeds = [], marksPerMove = [], modes = [] } = given.whatIf;
  const point = (axis: Axis, at: number | string, list: string, i: number, change: Partial<PullGiven>): Variant => {
    const changed = { ...given, ...change };
    try {
      checkShot(changed);
    } catch (thrown) {
      if (thrown instanceof NoAnswer) throw new NoAnswer(`whatIf/${list}/${i}`, thrown.message);
      throw thrown;
    }
    return { axis, at, given: changed };
  };
  return [
    ...pictureDelaysMs.map((at, i) => point('pictureDelayMs', at, 'pictureDelaysMs', i, { pictureDelayMs: at })),
    ...fNumbers.map((at, i) => point('fNumber', at, 'fNumbers', i, { fNumber: at })),
    ...focalLengthsMm.map((at, i) => point('focalLengthMm', at, 'focalLengthsMm', i, { focalLengthMm: at })),
    ...speeds.map((at, i) => point('speed', at, 'speeds', i, atSpeed(given, at))),
    ...marksPerMove.map((at, i) => point('marksPerMove', at, 'marksPerMove', i, { marksPerMove: at })),
    ...modes.map(({ name, pictureDelayMs, visibleBlurMm }, i) => point('mode', name, 'modes', i, { pictureDelayMs, visibleBlurMm })),
    ...singleChanges(given),
  ];
}

/** The same places at another pace; the shot lasts accordingly. */
function atSpeed(given: PullGiven, speed: number): Partial<PullGiven> {
  return { seconds: given.seconds / speed, keyframes: given.keyframes.map((one) => ({ ...one, atS: one.atS / speed })) };
}

const WAYS: Record<PullWay, string> = {
  stops: 'between two hard stops', marks: 'by known marks', picture: 'by the picture alone', both: 'by marks and picture',
};

/** One notch of each thing a crew can change, where this way of pulling uses it. */
function singleChanges(given: PullGiven): Variant[] {
  const byPicture = given.way === 'picture' || given.way === 'both';
  const byMarks = given.way === 'marks' || given.way === 'both';
  const motor = given.motorRpm !== Infinity;
  const change = (when: boolean, at: string, changed: Partial<PullGiven>): Variant[] =>
    when ? [{ axis: undefined, at, given: { ...given, ...changed } }] : [];
  return [
    ...change(true, 'one stop less open', { fNumber: given.fNumber * Math.SQRT2 }),
    ...change(true, 'a focal length a quarter shorter', { focalLengthMm: given.focalLengthMm * 0.75 }),
    ...change(given.keyframes.length > 1 && given.seconds / 0.75 <= 3600, 'everything a quarter slower', atSpeed(given, 0.75)),
    ...change(byMarks && given.keyframes.length > 1, 'two more marks in each move', { marksPerMove: Math.min(100, given.marksPerMove + 2) }),
    ...change(byPicture, 'half the picture delay', { pictureDelayMs: given.pictureDelayMs / 2 }),
    ...change(byPicture, 'half the blur visible: a larger or nearer screen', { visibleBlurMm: given.visibleBlurMm / 2 }),
    ...(byPicture ? (given.whatIf?.modes ?? []) : [])
      .filter((mode) => mode.pictureDelayMs !== given.pictureDelayMs || mode.visibleBlurMm !== given.visibleBlurMm)
      .flatMap(({ name, pictureDelayMs, visibleBlurMm }) => change(true, `mode: ${name}`, { pictureDelayMs, visibleBlurMm })),
    ...change(motor, 'a motor twice as fast', { motorRpm: given.motorRpm * 2 }),
    ...change(given.playDeg > 0, 'no play', { playDeg: 0 }),
    ...change(given.swayMm > 0, 'on a tripod', { swayMm: 0 }),
    ...(Object.keys(WAYS) as PullWay[]).flatMap((way) => change(way !== given.way, `pulled ${WAYS[way]}`, { way })),
  ];
}
