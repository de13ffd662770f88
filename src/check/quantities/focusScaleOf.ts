import { opticalPath } from '../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { type FocusScale, type RingMark, focusScale } from '../../calc/focus/focusScale.ts';
import { helicoid } from '../../calc/focus/helicoid.ts';
import { objectDistanceFromSensor } from '../../calc/optics/thinLens.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import type { Asking } from '../Asking.ts';
import { describeFigure } from '../describeFigure.ts';
import { NotEntered } from '../NotEntered.ts';
import type { SetupGlass } from '../subjects.ts';
import { focuserToSensor, frontToSensor } from './alongAxis.ts';
import { focusRing } from './focusRing.ts';

/** The scale of a focus ring: its angle over the distance from the sensor plane. */
export interface RingScale extends FocusScale {
  /** Taped marks; the law of a helicoid; or only its two ends, joined by such a law: an estimate. */
  readonly from: 'marks' | 'helicoid' | 'ends';
  /** Where it comes from, in words. */
  readonly says: string;
  readonly marks: readonly RingMark[];
}

/** The scale of the ring that focuses a glass. Throws `NoAnswer` where its marks do not run one way, `NotEntered` where nothing gives it. */
export function focusScaleOf(asking: Asking, subject: SetupGlass): RingScale {
  return asking.ledger.cell(`focus scale|${subject.setup}|${subject.glass}`, () => {
    const ring = focusRing(asking, subject);
    return scaleOfPart(asking, ring.part, {
      frontToSensorMm: () => frontToSensor(asking, subject, ring).value,
      powerAtMm: ring.part.has('lens') ? undefined : () => powerAt(asking, subject, ring),
    });
  });
}

/** Lengths that a scale may want, looked up only where it does. */
export interface ScaleDatums {
  /** The front of the ring's piece ahead of the sensor plane, for marks counted from the front. */
  readonly frontToSensorMm: () => number;
  /** Of a ring in front that changes its power: how far ahead of the sensor plane it stands. */
  readonly powerAtMm: (() => number) | undefined;
}

/** The scale of a part's ring. */
export function scaleOfPart(asking: Asking, part: PartView, datums: ScaleDatums): RingScale {
  const marks = part.read('focus/marks') as readonly { distanceMm: number | 'infinity'; angleDeg: number }[] | undefined;
  const ahead = part.read('focus/datum') === 'front' ? datums.frontToSensorMm() : 0;
  if (marks !== undefined) {
    const taped = marks.map(({ distanceMm, angleDeg }) => ({ distanceMm: distanceMm === 'infinity' ? Infinity : distanceMm + ahead, angleDeg }));
    return { ...focusScale(taped, `${part.path}/focus/marks`), from: 'marks', says: `${taped.length} marks${ahead > 0 ? ', counted from the front' : ''}`, marks: taped };
  }
  const lead = part.figure('focus/leadMm');
  const close = part.figure('focus/closeMm');
  const throwDeg = part.figure('focus/throwDeg');
  const wanted = [close, lead ?? throwDeg].some((one) => one === undefined);
  if (wanted || close === undefined) throw new NotEntered([marksOf(part)]);
  const closeMm = close.value + ahead;
  if (lead !== undefined && part.has('lens')) {
    const focalLengthMm = asking.figure(part, 'lens/focalLengthMm').value;
    return drawn((mm) => helicoidDeg(focalLengthMm, mm, lead.value), closeMm, { from: 'helicoid', says: 'the lead of the helicoid, as a thin lens' });
  }
  if (throwDeg === undefined) throw new NotEntered([marksOf(part)]);
  return betweenEnds(asking, part, { closeMm, throwDeg: throwDeg.value, powerAtMm: datums.powerAtMm });
}

/** Two ends alone, joined as a thin lens on a helicoid would run, or a front lens whose power grows evenly. */
function betweenEnds(
  asking: Asking, part: PartView, { closeMm, throwDeg, powerAtMm }: { closeMm: number; throwDeg: number; powerAtMm: (() => number) | undefined },
): RingScale {
  const says = 'only the throw and the closest distance, the way between reckoned';
  const law = powerAtMm === undefined ? lensLaw(asking.figure(part, 'lens/focalLengthMm').value) : powerLaw(powerAtMm());
  const atClose = law(closeMm);
  return drawn((mm) => (throwDeg * law(mm)) / atClose, closeMm, { from: 'ends', says });
}

const lensLaw = (focalLengthMm: number) => (mm: number): number => helicoidDeg(focalLengthMm, mm, 360);
const powerLaw = (standsAtMm: number) => (mm: number): number => 1 / (mm - standsAtMm);

function helicoidDeg(focalLengthMm: number, distanceMm: number, leadMm: number): number {
  const focusDistanceMm = distanceMm === Infinity ? Infinity : objectDistanceFromSensor(focalLengthMm, distanceMm);
  return helicoid({ focalLengthMm, focusDistanceMm, leadMm }).angleDeg;
}

const PLACES = 24; // of a known law; the smooth curve between them errs by less than a hundredth of a degree

function drawn(angleAt: (distanceMm: number) => number, closeMm: number, said: Pick<RingScale, 'from' | 'says'>): RingScale {
  const marks = Array.from({ length: PLACES + 1 }, (_, k) => (k === 0 ? Infinity : (closeMm * PLACES) / k)).map((distanceMm) => ({ distanceMm, angleDeg: angleAt(distanceMm) }));
  return { ...focusScale(marks), ...said, marks };
}

/** Where a ring in front that changes its power stands. */
function powerAt(asking: Asking, subject: SetupGlass, ring: SetupPiece): number {
  const { focuser } = opticalPath(asking.ledger, subject.setup, subject.glass);
  return focuser === undefined ? frontToSensor(asking, subject, ring).value : focuserToSensor(asking, subject, focuser).value;
}

const marksOf = (part: PartView) => ({ ...describeFigure(part, 'focus/marks'), says: `a few marks of ${part.name}: distance and ring angle` });
