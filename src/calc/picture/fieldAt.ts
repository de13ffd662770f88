import { calculator } from '../calculator.ts';
import { inputs, orInfinity, positive } from '../inputs.ts';
import { magnificationAt } from '../optics/thinLens.ts';

export interface FieldAt {
  widthMm: number;
  heightMm: number;
  magnification: number;
}

/** What fits in the picture at the distance in focus. The magnification is the vertical one; across it is smaller by the squeeze. */
export const fieldAt = calculator(
  {
    name: 'picture.fieldAt',
    sentence: 'Width and height of the field in focus, and the magnification, at a distance from the sensor plane.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length; of an anamorphic lens the longer, vertical one'),
      sensorWidthMm: positive('mm', 'width of the sensor area in use'),
      sensorHeightMm: positive('mm', 'height of the sensor area in use'),
      squeeze: positive('ratio', 'squeeze of the lens; 1 for spherical'),
      focusDistanceMm: orInfinity(positive('mm', 'distance in focus, from the sensor plane; null: infinity')),
    }),
    results: {
      widthMm: 'mm, width of the field; null: no end, focused at infinity',
      heightMm: 'mm, height of the field; null: no end, focused at infinity',
      magnification: 'size on the sensor over size in the field, up and down',
    },
    formula: 'u = (D + √(D² − 4fD))/2, from D = 4f on;  m = (D − u)/u;  width = w·s/m;  height = h/m',
    source: 'Thin-lens geometry, as in Ray, Applied Photographic Optics. A real lens has some mm between its principal planes, ignored here',
    examples: [
      {
        given: { focalLengthMm: 50, sensorWidthMm: 36, sensorHeightMm: 24, squeeze: 1, focusDistanceMm: 506.25 },
        gives: { magnification: '0.125', widthMm: '288.0', heightMm: '192.0' },
        source: 'thin lens at 450 mm: extension f²/(s − f) = 6.25 mm, m = 0.125, so 36 × 24 mm sees 288 × 192 mm',
      },
      {
        given: { focalLengthMm: 50, sensorWidthMm: 36, sensorHeightMm: 24, squeeze: 2, focusDistanceMm: 200 },
        gives: { magnification: '1.000', widthMm: '72.00', heightMm: '24.00' },
        source: 'life size at four focal lengths, the closest a thin lens comes to its image',
      },
    ],
  },
  ({ focalLengthMm, sensorWidthMm, sensorHeightMm, squeeze, focusDistanceMm }): FieldAt => {
    const magnification = magnificationAt(focalLengthMm, focusDistanceMm);
    return { widthMm: (sensorWidthMm * squeeze) / magnification, heightMm: sensorHeightMm / magnification, magnification };
  },
);
