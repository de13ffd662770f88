import { legsOf } from '../../assembly/lines/picture.ts';
import { pieceSetting } from '../../assembly/setupPieces.ts';
import { shownPicture } from '../../calc/video/shownPicture.ts';
import type { Asking } from '../Asking.ts';
import type { ViewerSubject } from '../subjects.ts';
import { recording } from './recording.ts';
import { type Seen, widenedBy } from './seenBy.ts';
import { squeezeOf } from './squeezeOf.ts';

/** The picture as it stands on a viewer's screen. */
export interface Shown {
  readonly heightMm: number;
  readonly widthMm: number;
  readonly panelPixelMm: number;
  /** Lines of the panel that it takes. */
  readonly panelLines: number;
  /** Lines left of the whole sensor height after the poorest stage. `undefined` where no picture arrives. */
  readonly pictureLines: number | undefined;
  readonly sensorHeightMm: number;
  readonly zoom: number;
}

/** Where the screen stands unset, the picture is taken as it should be set: de-squeezed once. */
export function shownOn(asking: Asking, subject: ViewerSubject, seen: Seen): Shown {
  return asking.ledger.cell(`shown|${subject.setup}|${subject.glass}|${subject.viewer}`, () => {
    const { screen, leg } = seen;
    const { sensorWidth, sensorHeight } = recording(asking, subject);
    const squeeze = squeezeOf(asking, subject).value;
    const set = widenedBy(seen, squeeze);
    const diagonal = asking.figure(screen.part, 'screen/diagonalMm');
    const panel = screen.part.facet('screen');
    const { shownHeightMm, shownWidthMm, panelPixelMm } = shownPicture({
      diagonalMm: diagonal.value, panelWidthPx: panel?.widthPx ?? 1, panelHeightPx: panel?.heightPx ?? 1,
      sensorWidthMm: sensorWidth.value, sensorHeightMm: sensorHeight.value, squeeze: set === 1 ? squeeze : set,
    });
    const aspect = sensorWidth.value / sensorHeight.value;
    return {
      heightMm: shownHeightMm, widthMm: shownWidthMm, panelPixelMm, panelLines: shownHeightMm / panelPixelMm,
      pictureLines: leg?.picture === undefined ? undefined : poorestLines(seen, aspect, squeeze),
      sensorHeightMm: sensorHeight.value, zoom: pieceSetting(screen, 'zoom') ?? 1,
    };
  });
}

/** The fewest lines that the sensor height has on the way: in each raster it fills the height, or is letter-boxed to the width. */
function poorestLines({ leg }: Seen, aspect: number, squeeze: number): number {
  const stages = leg === undefined ? [] : legsOf(leg);
  return Math.min(
    ...stages.flatMap(({ picture, desqueezedBy }) => {
      if (picture === undefined) return [];
      const wide = aspect * squeeze ** desqueezedBy.length;
      return Math.min(picture.heightPx, picture.widthPx / wide);
    }),
  );
}
