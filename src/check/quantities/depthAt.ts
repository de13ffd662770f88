import { opticalPath } from '../../assembly/opticalPath.ts';
import { blur as blurOf } from '../../calc/optics/blur.ts';
import { closeUp as seenThrough } from '../../calc/optics/closeUp.ts';
import { depthOfField } from '../../calc/optics/depthOfField.ts';
import { frontFocuserBlur } from '../../calc/optics/frontFocuserBlur.ts';
import { frontFocuserDepth } from '../../calc/optics/frontFocuserDepth.ts';
import { imageDistanceFromSensor } from '../../calc/optics/thinLens.ts';
import { NoAnswer } from '../../calc/calculator.ts';
import { printAmount } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import type { ShotSubject } from '../subjects.ts';
import { type AxisLength, focuserToSensor } from './alongAxis.ts';
import { type CloseUpInUse, closeUpInUse, ownMark } from './closeUpInUse.ts';
import { fNumberAt } from './lightThrough.ts';
import { sharpness } from './sharpness.ts';
import { lensOf } from './squeezeOf.ts';

/** Near and far limits of what is sharp, mm from the sensor plane; `Infinity` where there is no far limit. */
export interface Depth {
  readonly nearMm: number;
  readonly farMm: number;
  readonly totalMm: number;
}

/** How a shot's glass focuses, which decides the form its depth takes and the datum its distances need. */
export interface Focusing {
  readonly form: 'front focuser' | 'lens' | 'sensor';
  /** In words: which form, from where. */
  readonly says: string;
  /** Where its distances start, ahead of the sensor plane; of the sensor form only roughly. */
  readonly offsetMm: number;
  readonly focalLengthMm: number;
  readonly fNumber: number;
  readonly circleOfConfusionMm: number;
  readonly closeUp: CloseUpInUse | undefined;
}

/** The form: a focuser in front where there is one, else the lens with its principal plane, or without one from the sensor. */
export function focusing(asking: Asking, subject: ShotSubject): Focusing {
  const path = opticalPath(asking.ledger, subject.setup, subject.glass);
  const { part } = lensOf(path, subject.glass);
  const focalLengthMm = asking.figure(part, 'lens/focalLengthMm').value;
  const shared = {
    focalLengthMm,
    fNumber: fNumberAt(asking, subject).value,
    circleOfConfusionMm: sharpness(asking, subject).value,
    closeUp: closeUpInUse(asking, subject),
  };
  if (path.focuser !== undefined) {
    const at: AxisLength = focuserToSensor(asking, subject, path.focuser);
    const says = `a focuser in front, ${printAmount({ value: at.value, unit: 'mm' })} ahead of the sensor (${at.says})`;
    return { ...shared, form: 'front focuser', offsetMm: at.value, says };
  }
  const principal = part.figure('lens/principalToSensorMm');
  if (principal === undefined) return { ...shared, form: 'sensor', offsetMm: focalLengthMm, says: 'a thin lens, distances from the sensor plane' };
  return { ...shared, form: 'lens', offsetMm: principal.value, says: 'a thin lens at the front principal plane' };
}

/** Depth of field of a shot with focus at a distance from the sensor plane, through whatever is on the front. */
export function depthAt(asking: Asking, subject: ShotSubject, distanceMm: number): Depth {
  return depthOf(focusing(asking, subject), distanceMm);
}

/** Depth of field of a way of focusing, at a distance from the sensor plane. */
export function depthOf(how: Focusing, distanceMm: number): Depth {
  if (how.form === 'front focuser') {
    // Close-up lens and focuser stand together: only their sum bends, and the blur goes by the distances before both.
    return frontFocuserDepth({ ...how, focusDistanceMm: distanceMm, focuserToSensorMm: how.offsetMm });
  }
  const bare = bareDepth(how, markOf(how, distanceMm));
  if (how.closeUp === undefined) return bare;
  const { powerDpt, toSensorMm: diopterToSensorMm } = how.closeUp;
  const seen = (focusDistanceMm: number): number => seenThrough({ powerDpt, focusDistanceMm, diopterToSensorMm }).tapeMm;
  const [nearMm, farMm] = [seen(bare.nearMm), seen(bare.farMm)];
  return { nearMm, farMm, totalMm: farMm - nearMm };
}

function bareDepth({ form, offsetMm, ...how }: Focusing, markMm: number): Depth {
  const at = { focalLengthMm: how.focalLengthMm, fNumber: how.fNumber, circleOfConfusionMm: how.circleOfConfusionMm };
  if (form === 'sensor') return depthOfField({ ...at, focusDistanceMm: markMm, from: 'sensor' });
  const { nearMm, farMm, totalMm } = depthOfField({ ...at, focusDistanceMm: markMm - offsetMm, from: 'lens' });
  return { nearMm: nearMm + offsetMm, farMm: farMm + offsetMm, totalMm };
}

/** Blur on the sensor of a subject at one distance with focus at another, both from the sensor plane. */
export function blurAt(how: Focusing, { focusMm, subjectMm }: { focusMm: number; subjectMm: number }): number {
  const { focalLengthMm, fNumber } = how;
  if (how.form === 'front focuser') {
    return frontFocuserBlur({ focalLengthMm, fNumber, focusDistanceMm: focusMm, subjectDistanceMm: subjectMm, focuserToSensorMm: how.offsetMm }).diameterMm;
  }
  const [focus, subject] = [markOf(how, focusMm), markOf(how, subjectMm)];
  const lensMm = how.form === 'sensor' ? imageDistanceFromSensor(focalLengthMm, focus) : how.offsetMm;
  return blurOf({ focalLengthMm, fNumber, focusDistanceMm: focus - lensMm, subjectDistanceMm: subject - lensMm }).diameterMm;
}

/** The one focus that leaves both ends of a range equally soft: half way between them in dioptres. */
export function middleFocus({ offsetMm }: Focusing, nearMm: number, farMm: number): number {
  return 2 / (1 / (nearMm - offsetMm) + 1 / (farMm - offsetMm)) + offsetMm;
}

function markOf({ closeUp }: Focusing, distanceMm: number): number {
  const mark = ownMark(closeUp, distanceMm);
  if (mark === undefined) throw new NoAnswer('diopter', `With ${closeUp?.name ?? 'the close-up lens'} on, ${printAmount({ value: distanceMm / 1000, unit: 'm' })} lies beyond the lens's infinity.`);
  return mark;
}
