import { calculator } from '../calculator.ts';
import { inputs, positive, whole } from '../inputs.ts';

export interface ShownPicture {
  shownWidthMm: number;
  shownHeightMm: number;
  panelPixelMm: number;
}

/** How large the de-squeezed picture stands on a panel: a wide picture leaves bars, and with them lines of the panel. */
export const shownPicture = calculator(
  {
    name: 'video.shownPicture',
    sentence: 'Size of the whole de-squeezed sensor picture on a panel, bars left over, and the pitch of the panel.',
    inputs: inputs({
      diagonalMm: positive('mm', 'diagonal of the panel'),
      panelWidthPx: whole(1, 'px', 'panel width'),
      panelHeightPx: whole(1, 'px', 'panel height'),
      sensorWidthMm: positive('mm', 'width of the sensor area shown'),
      sensorHeightMm: positive('mm', 'height of the sensor area shown'),
      squeeze: positive('ratio', 'squeeze that the screen undoes; 1 where it shows the picture squeezed'),
    }),
    results: { shownWidthMm: 'mm', shownHeightMm: 'mm, before any punch-in', panelPixelMm: 'mm, square pixels' },
    formula: 'pitch = diagonal/hypot(px); the largest rectangle of aspect w·s/h in the panel',
    source: 'Geometry',
    examples: [
      {
        given: { diagonalMm: 127, panelWidthPx: 1920, panelHeightPx: 1080, sensorWidthMm: 16, sensorHeightMm: 9, squeeze: 1 },
        gives: { shownWidthMm: '110.69', shownHeightMm: '62.26' },
        source: 'derived: a 5 inch panel of 16:9 is 4.358 by 2.451 inches',
      },
    ],
  },
  ({ diagonalMm, panelWidthPx, panelHeightPx, sensorWidthMm, sensorHeightMm, squeeze }): ShownPicture => {
    const panelPixelMm = diagonalMm / Math.hypot(panelWidthPx, panelHeightPx);
    const aspect = (sensorWidthMm * squeeze) / sensorHeightMm;
    const shownHeightMm = panelPixelMm * Math.min(panelHeightPx, panelWidthPx / aspect);
    return { shownWidthMm: shownHeightMm * aspect, shownHeightMm, panelPixelMm };
  },
);
