import { opticalPath } from '../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
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

/** The glass in front of the taking lens as `optics.adapterCorner` wants it, for any stop and any part of the frame. */
export interface AdapterGlass extends Omit<Parameters<typeof adapterCorner>[0], 'fNumber' | 'sensorWidthMm' | 'sensorHeightMm'> {
  readonly block: SetupPiece;
  /** Where its rim counts too. */
  readonly focuser: SetupPiece | undefined;
}

/** Block and focuser on the taking lens of a glass; `undefined` where there is no block. */
export function adapterGlass(asking: Asking, subject: SetupGlass): AdapterGlass | undefined {
  const path = opticalPath(asking.ledger, subject.setup, subject.glass);
  const { block, focuser } = path;
  if (block === undefined) return undefined;
  const { gap, squeeze, elementSpacingMm, rearToPupilMm, focalLengthMm } = blockOnLens(asking, subject, lensOf(path, subject.glass), block);
  const { rear, front } = asking.figures(block.part, { rear: 'block/rearClearMm', front: 'block/frontClearMm' });
  const thin = { squeeze, elementSpacingMm, rearToPupilMm, focalLengthMm, rearClearMm: rear.value, frontClearMm: front.value, block };
  const clear = focuser?.part.figure('focuser/clearMm') ?? focuser?.part.figure('front/clearMm');
  if (focuser === undefined || clear === undefined) return { ...thin, focuser: undefined, focuserAheadMm: 0, focuserClearMm: front.value };
  const focuserAheadMm = recessOf(asking, block, { elementSpacingMm, gap }) + asking.figure(focuser.part, 'lengthMm').value;
  return { ...thin, focuser, focuserAheadMm, focuserClearMm: clear.value };
}

interface CornerAt {
  readonly fNumber: number;
  /** Of another taking lens, its pupil as deep. */
  readonly focalLengthMm?: number;
}

/** Light for a frame corner through the block of a glass and a focuser ahead of it, at any stop; `undefined` where there is no block. */
export function cornerOf(asking: Asking, subject: SetupGlass, { mode, area = 'frame' }: { readonly mode?: string | undefined; readonly area?: 'frame' | 'guarded' } = {}): ((at: CornerAt) => CornerLight) | undefined {
  const own = adapterGlass(asking, subject);
  if (own === undefined) return undefined;
  const { sensorWidthMm, sensorHeightMm } = deliveryFrame(asking, subject, mode)[area];
  return ({ fNumber, focalLengthMm = own.focalLengthMm }) => {
    const glass = { ...own, focalLengthMm };
    const corner = adapterCorner({ ...glass, fNumber, sensorWidthMm, sensorHeightMm });
    const rims = [
      rim(`rear glass of ${glass.block.name}`, glass.rearClearMm, corner, 'rear'),
      rim(`front glass of ${glass.block.name}`, glass.frontClearMm, corner, 'front'),
      ...(glass.focuser === undefined ? [] : [rim(`front of ${glass.focuser.name}`, glass.focuserClearMm, corner, 'focuser')]),
    ];
    return { share: corner.share, rims, beamDiameterMm: glass.focalLengthMm / fNumber, fNumber };
  };
}

const rim = (name: string, clearMm: number, corner: AdapterCorner, which: 'rear' | 'front' | 'focuser'): Rim => ({ name, clearMm, offsetMm: corner[`${which}OffsetMm`], share: corner[`${which}Share`] });
