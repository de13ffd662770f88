import { opticalPath } from '../../assembly/opticalPath.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import type { SetupGlass } from '../subjects.ts';

/** The canvas and the sensor area that the camera mode of a setup records. */
export interface Recording {
  readonly modeName: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly sensorWidth: Figure;
  readonly sensorHeight: Figure;
}

/** What the mode of a setup records; another mode of the same body where its path is given. */
export function recording(asking: Asking, { setup, glass }: SetupGlass, otherMode?: string): Recording {
  const { body, mode: ownMode } = opticalPath(asking.ledger, setup, glass);
  const mode = otherMode ?? ownMode;
  if (body === undefined) throw new NotEntered([{ path: `builds/${asking.ledger.at(`setups/${setup}/camera`) as string}/camera`, says: 'the camera body of the build' }]);
  const { sensorWidth, sensorHeight } = asking.figures(body.part, { sensorWidth: `${mode}/sensorWidthMm`, sensorHeight: `${mode}/sensorHeightMm` });
  return {
    modeName: body.part.read(`${mode}/name`) as string,
    widthPx: body.part.read(`${mode}/widthPx`) as number,
    heightPx: body.part.read(`${mode}/heightPx`) as number,
    sensorWidth,
    sensorHeight,
  };
}
