import { opticalPath } from '../../assembly/opticalPath.ts';
import { frame as frameIn } from '../../calc/picture/frame.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { type Recording, recording } from './recording.ts';
import { squeezeOf } from './squeezeOf.ts';

/** A rectangle on the recorded canvas, px from its upper left corner, unrounded: whoever draws it chooses how to round. */
export interface CanvasRect {
  readonly xPx: number;
  readonly yPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A frame three ways: on the canvas, on the sensor, and as shown once widened. */
export interface FrameArea {
  readonly canvas: CanvasRect;
  readonly sensorWidthMm: number;
  readonly sensorHeightMm: number;
  /** Width once widened by the squeeze; the height is the canvas one. */
  readonly shownWidthPx: number;
}

/** Where the delivered picture lies in what is recorded. */
export interface DeliveryFrame {
  readonly recording: Recording;
  readonly squeeze: number;
  readonly aspect: number;
  /** Width to height of the whole canvas once widened. */
  readonly canvasAspect: number;
  /** Share of width and height kept free around the frame. */
  readonly protection: number;
  /** The largest area of the delivery's shape: the frame and what is kept free around it. */
  readonly guarded: FrameArea;
  /** What is delivered. */
  readonly frame: FrameArea;
  /** Share of the canvas that the frame takes. */
  readonly usedFraction: number;
  readonly cuts: 'sides' | 'top and bottom' | 'nothing';
}

/** The delivery's frame in what a setup records with a glass; in another mode of the same body where one is named. */
export function deliveryFrame(asking: Asking, subject: SetupGlass, mode?: string): DeliveryFrame {
  const { ledger } = asking;
  const modePath = mode ?? opticalPath(ledger, subject.setup, subject.glass).mode;
  return ledger.cell(`delivery frame|${subject.setup}|${subject.glass}|${modePath}`, () => {
    const taken = recording(asking, subject, modePath);
    const squeeze = squeezeOf(asking, subject).value;
    const aspect = ledger.at('needs/delivery/aspect') as number;
    const protection = (ledger.at('needs/delivery/protection') as number | undefined) ?? 0;
    const whole = frameIn({ canvasWidthPx: taken.widthPx, canvasHeightPx: taken.heightPx, squeeze, aspect });
    const kept = 1 - protection;
    const cuts = whole.widthPx < taken.widthPx ? 'sides' : whole.heightPx < taken.heightPx ? 'top and bottom' : 'nothing';
    return {
      recording: taken,
      squeeze,
      aspect,
      canvasAspect: whole.desqueezedAspect,
      protection,
      guarded: areaOf(taken, squeeze, whole),
      frame: areaOf(taken, squeeze, shrunk(whole, kept)),
      usedFraction: whole.usedFraction * kept * kept,
      cuts,
    };
  });
}

function areaOf(taken: Recording, squeeze: number, { xPx, yPx, widthPx, heightPx }: CanvasRect): FrameArea {
  return {
    canvas: { xPx, yPx, widthPx, heightPx },
    sensorWidthMm: (taken.sensorWidth.value * widthPx) / taken.widthPx,
    sensorHeightMm: (taken.sensorHeight.value * heightPx) / taken.heightPx,
    shownWidthPx: widthPx * squeeze,
  };
}

/** A rectangle made smaller about its middle, as protection is meant in the ASC Framing Decision List. */
const shrunk = ({ xPx, yPx, widthPx, heightPx }: CanvasRect, kept: number): CanvasRect => ({
  xPx: xPx + (widthPx * (1 - kept)) / 2,
  yPx: yPx + (heightPx * (1 - kept)) / 2,
  widthPx: widthPx * kept,
  heightPx: heightPx * kept,
});

/** The picture inside the container delivered: a 2.39 picture in a 16:9 container has black above and below. */
export function deliveredPicture(asking: Asking): { widthPx: number; lines: number } {
  const { aspect, widthPx, heightPx } = asking.ledger.at('needs/delivery') as { aspect: number; widthPx: number; heightPx?: number };
  const lines = widthPx / aspect;
  return heightPx === undefined ? { widthPx, lines } : { widthPx: Math.min(widthPx, heightPx * aspect), lines: Math.min(heightPx, lines) };
}
