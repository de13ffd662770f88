import { opticalPath } from '../../assembly/opticalPath.ts';
import { adapterCorner } from '../../calc/optics/adapterCorner.ts';
import { Asking } from '../../check/Asking.ts';
import { adapterGlass } from '../../check/quantities/cornerLight.ts';
import { type CanvasRect, deliveredPicture, deliveryFrame } from '../../check/quantities/deliveryFrame.ts';
import { widestInUse } from '../../check/quantities/lightThrough.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { viewOf } from './View.ts';

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
  /** What block and focuser let pass over the recorded area, where there is one and its figures are entered; else why not. */
  readonly light: BlockLight | undefined;
  readonly noLight: string | undefined;
}

/** Share of the light that passes block and focuser over a quarter of the recorded area: from the middle out, row by row upwards. */
export interface BlockLight {
  readonly columns: number;
  readonly rows: number;
  readonly shares: readonly number[];
  readonly fNumber: number;
}

export function frameView(ledger: Ledger, subject: SetupGlass): FrameView {
  const asking = new Asking(ledger);
  const { recording, squeeze, aspect, canvasAspect, protection, usedFraction, cuts, frame, guarded } = deliveryFrame(asking, subject);
  const { lens } = opticalPath(ledger, subject.setup, subject.glass);
  const delivered = deliveredPicture(asking);
  const light = viewOf(() => blockLight(asking, subject, recording.sensorWidth.value, recording.sensorHeight.value));
  return {
    modeName: recording.modeName, canvasWidthPx: recording.widthPx, canvasHeightPx: recording.heightPx, sensorWidthMm: recording.sensorWidth.value, sensorHeightMm: recording.sensorHeight.value,
    squeeze, aspect, canvasAspect, protection, usedFraction, cuts, frame: frame.canvas, guarded: guarded.canvas, frameWidthMm: frame.sensorWidthMm, frameHeightMm: frame.sensorHeightMm,
    shownWidthPx: frame.shownWidthPx, deliveredWidthPx: delivered.widthPx, deliveredLines: delivered.lines, imageCircleMm: lens?.part.figure('lens/imageCircleMm')?.value, lensName: lens?.name,
    light: light.ok ? light.value : undefined, noLight: light.ok ? undefined : light.says,
  };
}

const COLUMNS = 24;
const ROWS = 20;

/** At the widest stop the glass is used at in this setup. */
function blockLight(asking: Asking, subject: SetupGlass, sensorWidthMm: number, sensorHeightMm: number): BlockLight | undefined {
  const glass = adapterGlass(asking, subject);
  if (glass === undefined) return undefined;
  const { fNumber } = widestInUse(asking, subject);
  const shares = Array.from({ length: COLUMNS * ROWS }, (_, at) => {
    const [across, up] = [((at % COLUMNS) + 0.5) / COLUMNS, (Math.floor(at / COLUMNS) + 0.5) / ROWS];
    return adapterCorner({ ...glass, fNumber, sensorWidthMm: sensorWidthMm * across, sensorHeightMm: sensorHeightMm * up }).share;
  });
  return { columns: COLUMNS, rows: ROWS, shares, fNumber };
}

