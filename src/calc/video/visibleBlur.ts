import { calculator } from '../calculator.ts';
import { between, inputs, positive, whole } from '../inputs.ts';

export interface VisibleBlur {
  blurMm: number;
  limitedBy: 'picture' | 'panel' | 'eye';
}

/** The smallest blur on the sensor that a viewer can see on a screen. Compare it with the circle of confusion: can focus be judged here at all? */
export const visibleBlur = calculator(
  {
    name: 'video.visibleBlur',
    sentence: 'The smallest blur on the sensor, in the vertical meridian, that this viewer can see on this screen.',
    inputs: inputs({
      sensorHeightMm: positive('mm', 'height of the sensor area shown'),
      pictureHeightPx: whole(1, 'px', 'lines of the poorest picture on the way to the screen, for that height'),
      shownHeightMm: positive('mm', 'height of the whole sensor picture on the screen, de-squeezed, before zoom'),
      panelPixelMm: positive('mm', 'pitch of the panel'),
      zoom: positive('ratio', 'punch-in; 1 for none'),
      viewingDistanceMm: positive('mm', 'from eye to screen'),
      acuityArcmin: between(0.01, 600, 'arcmin', 'smallest angle the eye resolves; 1 is 20/20'),
    }),
    results: { blurMm: 'mm on the sensor', limitedBy: 'which of picture, panel and eye takes most' },
    formula: 'picture h/lines; panel pitch·h/(shown·zoom); eye 2·d·tan(a/2)·h/(shown·zoom); blur = root of the sum of their squares',
    source: 'Acuity of 1 arcminute (20/20); independent blurs add by their squares. A viewer’s own factor is measured by detuning',
    examples: [
      {
        given: {
          sensorHeightMm: 1080, pictureHeightPx: 1_000_000, shownHeightMm: 1080, panelPixelMm: 0.0001, zoom: 1, viewingDistanceMm: 3437.75,
          acuityArcmin: 1,
        },
        gives: { blurMm: '1.000', limitedBy: 'eye' },
        source: 'ITU-R BT.500 by way of Poynton: adjacent lines of 1080 part by 1 arcminute at about 3.18 picture heights',
      },
    ],
  },
  ({ sensorHeightMm, pictureHeightPx, shownHeightMm, panelPixelMm, zoom, viewingDistanceMm, acuityArcmin }): VisibleBlur => {
    const sensorPerShown = sensorHeightMm / (shownHeightMm * zoom);
    const acuityRad = ((acuityArcmin / 60) * Math.PI) / 180;
    const parts = {
      picture: sensorHeightMm / pictureHeightPx,
      panel: panelPixelMm * sensorPerShown,
      eye: 2 * viewingDistanceMm * Math.tan(acuityRad / 2) * sensorPerShown,
    };
    const limitedBy = (['picture', 'panel', 'eye'] as const).reduce((worst, part) => (parts[part] > parts[worst] ? part : worst));
    return { blurMm: Math.hypot(parts.picture, parts.panel, parts.eye), limitedBy };
  },
);
