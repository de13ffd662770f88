import { opticalPath } from '../../assembly/opticalPath.ts';
import { Asking } from '../../check/Asking.ts';
import { type CanvasRect, deliveredPicture, deliveryFrame } from '../../check/quantities/deliveryFrame.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';

/** What a setup records with a glass, and where the delivered picture lies in it. */
export interface FrameView {
  readonly modeName: string;
  readonly canvasWidthPx: number;
  readonly canvasHeightPx: number;
  readonly sensorWidthMm: number;
  readonly sensorHeightMm: number;
  readonly squeeze: number;
  readonly aspect: number;
  readonly canvasAspect: number;
  readonly protection: number;
  readonly usedFraction: number;
  readonly cuts: 'sides' | 'top and bottom' | 'nothing';
  readonly frame: CanvasRect;
  readonly guarded: CanvasRect;
  readonly frameWidthMm: number;
  readonly frameHeightMm: number;
  readonly shownWidthPx: number;
  readonly deliveredWidthPx: number;
  readonly deliveredLines: number;
  /** The circle the lens covers, where it is entered. */
  readonly imageCircleMm: number | undefined;
  readonly lensName: string | undefined;
}

export function frameView(ledger: Ledger, subject: SetupGlass): FrameView {
  const asking = new Asking(ledger);
  const { recording, squeeze, aspect, canvasAspect, protection, usedFraction, cuts, frame, guarded } = deliveryFrame(asking, subject);
  const { lens } = opticalPath(ledger, subject.setup, subject.glass);
  const delivered = deliveredPicture(asking);
  return {
    modeName: recording.modeName, canvasWidthPx: recording.widthPx, canvasHeightPx: recording.heightPx, sensorWidthMm: recording.sensorWidth.value, sensorHeightMm: recording.sensorHeight.value,
    squeeze, aspect, canvasAspect, protection, usedFraction, cuts, frame: frame.canvas, guarded: guarded.canvas, frameWidthMm: frame.sensorWidthMm, frameHeightMm: frame.sensorHeightMm,
    shownWidthPx: frame.shownWidthPx, deliveredWidthPx: delivered.widthPx, deliveredLines: delivered.lines, imageCircleMm: lens?.part.figure('lens/imageCircleMm')?.value, lensName: lens?.name,
  };
}
