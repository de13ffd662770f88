import { recording } from '../../check/quantities/recording.ts';
import { squeezeOf } from '../../check/quantities/squeezeOf.ts';
import { ifEntered } from '../entered.ts';
import type { MakingOfSetup } from '../paper.ts';
import { type FdlFrame, fdlFrame, wholeAspect } from './fdlRound.ts';

/** What is recorded with the glasses of one squeeze, and the frame in it, in whole pixels. */
export interface Canvas extends FdlFrame {
  readonly glasses: readonly string[];
  readonly modeName: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly sensorWidthMm: number;
  readonly sensorHeightMm: number;
  readonly squeeze: number;
  readonly aspect: { readonly width: number; readonly height: number };
  readonly protection: number;
}

/** Frames are rounded up to even pixels: recorders and players want even ones, and nothing wanted is lost. */
export const ROUNDING = { even: 'even', mode: 'up' } as const;

/** The canvases of a setup, one for each squeeze among its glasses; glasses whose squeeze is not entered are left out. */
export function canvases({ asking, ledger, setup, glasses }: MakingOfSetup): Canvas[] {
  const aspect = wholeAspect(ledger.at('needs/delivery/aspect') as number);
  const protection = (ledger.at('needs/delivery/protection') as number | undefined) ?? 0;
  const found: Canvas[] = [];
  for (const glass of glasses) {
    const read = ifEntered(() => ({ taken: recording(asking, { setup, glass }), squeeze: squeezeOf(asking, { setup, glass }).value }));
    if (read === undefined) continue;
    const { taken, squeeze } = read;
    const known = found.findIndex((one) => one.squeeze === squeeze);
    const name = (ledger.at(`glasses/${glass}/name`) as string | undefined) ?? glass;
    if (known >= 0) found[known] = { ...(found[known] as Canvas), glasses: [...(found[known] as Canvas).glasses, name] };
    else {
      found.push({
        glasses: [name], modeName: taken.modeName, widthPx: taken.widthPx, heightPx: taken.heightPx, sensorWidthMm: taken.sensorWidth.value, sensorHeightMm: taken.sensorHeight.value, squeeze, aspect, protection,
        ...fdlFrame({ canvasWidthPx: taken.widthPx, canvasHeightPx: taken.heightPx, squeeze, aspectWidth: aspect.width, aspectHeight: aspect.height, protection, rounding: ROUNDING }),
      });
    }
  }
  return found;
}
