import { type VisibleBlur, visibleBlur as smallestBlur } from '../../calc/video/visibleBlur.ts';
import { sight } from '../../standards/assumptions/sight.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import type { ViewerSubject } from '../subjects.ts';
import { seenBy } from './seenBy.ts';
import { shootFigure } from './shootFigures.ts';
import { shownOn } from './shownOn.ts';

/** The smallest blur on the sensor that a viewer can see, and what that rests on. */
export interface SeenBlur extends VisibleBlur {
  readonly zoom: number;
  readonly distance: Figure;
  /** The viewer's own factor, measured; 1 where it is not. */
  readonly viewerRatio: number;
}

/** With the punch-in that is set, or another where one is named. `undefined` where no picture arrives. */
export function visibleBlur(asking: Asking, subject: ViewerSubject, zoom?: number): SeenBlur | undefined {
  const { ledger } = asking;
  return ledger.cell(`visible blur|${subject.setup}|${subject.glass}|${subject.viewer}|${zoom ?? 'set'}`, () => {
    const seen = seenBy(ledger, subject);
    if (seen === undefined) return undefined;
    const shown = shownOn(asking, subject, seen);
    if (shown.pictureLines === undefined) return undefined;
    const distance = shootFigure(ledger, `${seen.path}/distanceMm`);
    if (distance === undefined) throw new NotEntered([{ path: `${seen.path}/distanceMm`, says: `from the eye of ${seen.name} to ${seen.screen.name}` }]);
    const used = zoom ?? shown.zoom;
    const found = smallestBlur({
      sensorHeightMm: shown.sensorHeightMm, pictureHeightPx: Math.max(1, Math.round(shown.pictureLines)), shownHeightMm: shown.heightMm, panelPixelMm: shown.panelPixelMm,
      zoom: used, viewingDistanceMm: distance.value, acuityArcmin: asking.assume(sight.acuityArcmin).value,
    });
    const viewerRatio = shootFigure(ledger, `${seen.path}/blurRatio`)?.value ?? 1;
    return { ...found, blurMm: found.blurMm * viewerRatio, zoom: used, distance, viewerRatio };
  });
}
