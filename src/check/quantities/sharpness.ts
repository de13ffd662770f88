import { circleOfConfusion } from '../../calc/optics/circleOfConfusion.ts';
import { figureOf } from '../../shoot/ledger/figures.ts';
import type { StatedFigure } from '../../shoot/schema/basics.ts';
import { picture } from '../../standards/assumptions/picture.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { type Bounded, through } from './Bounded.ts';
import { deliveredPicture, deliveryFrame } from './deliveryFrame.ts';

/** What counts as sharp: the largest blur on the sensor, mm, vertical meridian; and who says so. */
export interface Sharpness extends Bounded {
  readonly statedBy: 'shot' | 'delivery' | 'lines';
  /** Where it comes from, in words. */
  readonly says: string;
}

/** The circle of confusion: what the shot states, else what the delivery states, else from the frame's height and the lines delivered. */
export function sharpness(asking: Asking, subject: SetupGlass & { readonly shot?: string }): Sharpness {
  const { shot } = subject;
  const ofShot = shot === undefined ? undefined : stated(asking, `shots/${shot}/circleOfConfusionMm`);
  if (ofShot !== undefined) return { ...ofShot, statedBy: 'shot', says: 'stated by the shot' };
  const ofDelivery = stated(asking, 'needs/delivery/circleOfConfusionMm');
  return ofDelivery === undefined ? sharpnessFromLines(asking, subject) : { ...ofDelivery, statedBy: 'delivery', says: 'stated by the delivery' };
}

/** What the delivery's own lines ask, whatever is stated. */
export function sharpnessFromLines(asking: Asking, subject: SetupGlass): Sharpness {
  const frameHeightMm = deliveryFrame(asking, subject).frame.sensorHeightMm;
  const { lines } = deliveredPicture(asking);
  const linesPerBlur = asking.assume(picture.linesInCircle);
  const circle = through(linesPerBlur, (k) => circleOfConfusion({ frameHeightMm, deliveryLines: lines, linesPerBlur: k }).circleOfConfusionMm);
  return { ...circle, statedBy: 'lines', says: `${linesPerBlur.value} of the ${Math.round(lines)} lines delivered` };
}

function stated(asking: Asking, path: string): Bounded | undefined {
  const value = asking.ledger.at(path) as StatedFigure | undefined;
  return value === undefined ? undefined : figureOf(value, path, 'sheet');
}
