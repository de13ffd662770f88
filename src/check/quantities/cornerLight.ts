import { opticalPath } from '../../assembly/opticalPath.ts';
import { type AdapterCorner, adapterCorner } from '../../calc/optics/adapterCorner.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { deliveryFrame } from './deliveryFrame.ts';
import { blockOnLens, recessOf } from './entrancePupils.ts';
import { lensOf } from './squeezeOf.ts';

/** One round glass that the beam of a corner must get through. */
export interface Rim {
  readonly name: string;
  readonly clearMm: number;
  /** Off the middle, where the beam crosses it. */
  readonly offsetMm: number;
  /** Share of the beam that it alone lets by. */
  readonly share: number;
}

/** What reaches a corner of the frame through block and focuser, for drawing and for judging. */
export interface CornerLight {
  readonly share: number;
  readonly rims: readonly Rim[];
  readonly beamDiameterMm: number;
  readonly fNumber: number;
}

/** Light for a frame corner through the block of a glass and a focuser ahead of it; `undefined` where there is no block. */
export function cornerLight(
  asking: Asking,
  subject: SetupGlass,
  { fNumber, mode, area = 'frame', focalLengthMm }: { fNumber: number; mode?: string | undefined; area?: 'frame' | 'guarded'; /** Of another taking lens, its pupil as deep. */ focalLengthMm?: number },
): CornerLight | undefined {
  const { block, focuser, ...path } = piecesOf(asking, subject);
  if (block === undefined) return undefined;
  const own = blockOnLens(asking, subject, lensOf(path, subject.glass), block);
  const on = focalLengthMm === undefined ? own : { ...own, focalLengthMm };
  const { rear, front } = asking.figures(block.part, { rear: 'block/rearClearMm', front: 'block/frontClearMm' });
  const focuserClear = focuser?.part.figure('focuser/clearMm') ?? focuser?.part.figure('front/clearMm');
  const { sensorWidthMm, sensorHeightMm } = deliveryFrame(asking, subject, mode)[area];
  const corner = adapterCorner({
    squeeze: on.squeeze, elementSpacingMm: on.elementSpacingMm, rearToPupilMm: on.rearToPupilMm, focalLengthMm: on.focalLengthMm,
    fNumber, sensorWidthMm, sensorHeightMm, rearClearMm: rear.value, frontClearMm: front.value,
    ...(focuser === undefined || focuserClear === undefined
      ? { focuserAheadMm: 0, focuserClearMm: front.value }
      : { focuserAheadMm: recessOf(asking, block, on) + asking.figure(focuser.part, 'lengthMm').value, focuserClearMm: focuserClear.value }),
  });
  const rims = [rim(`rear glass of ${block.name}`, rear.value, corner, 'rear'), rim(`front glass of ${block.name}`, front.value, corner, 'front')];
  if (focuser !== undefined && focuserClear !== undefined) rims.push(rim(`front of ${focuser.name}`, focuserClear.value, corner, 'focuser'));
  return { share: corner.share, rims, beamDiameterMm: on.focalLengthMm / fNumber, fNumber };
}

function piecesOf(asking: Asking, { setup, glass }: SetupGlass) {
  const path = opticalPath(asking.ledger, setup, glass);
  return { lens: path.lens, block: path.block, focuser: path.focuser };
}

const rim = (name: string, clearMm: number, corner: AdapterCorner, which: 'rear' | 'front' | 'focuser'): Rim => ({ name, clearMm, offsetMm: corner[`${which}OffsetMm`], share: corner[`${which}Share`] });
