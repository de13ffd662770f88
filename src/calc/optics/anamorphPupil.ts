import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';

export interface AnamorphPupil {
  horizontalDistanceMm: number;
  horizontalDiameterMm: number;
  verticalDistanceMm: number;
  verticalDiameterMm: number;
}

/** The pupil is two: seen through the squeezing meridian it lies nearer the front and is narrower. */
export const anamorphPupil = calculator(
  {
    name: 'optics.anamorphPupil',
    sentence: 'Where the entrance pupil of a taking lens lies, and how large it is, seen through an afocal anamorphic block.',
    inputs: inputs({
      squeeze: positive('ratio', 'squeeze of the block'),
      elementSpacingMm: nonNegative('mm', 'from the front element of the block to its rear element'),
      rearToPupilMm: nonNegative('mm', 'from the rear element of the block to the entrance pupil of the taking lens'),
      focalLengthMm: positive('mm', 'focal length of the taking lens'),
      fNumber: positive('ratio', 'f-number of the taking lens'),
    }),
    results: {
      horizontalDistanceMm: 'mm, pupil of the horizontal meridian behind the front element',
      horizontalDiameterMm: 'mm, its width',
      verticalDistanceMm: 'mm, pupil of the vertical meridian behind the front element',
      verticalDiameterMm: 'mm, its height',
    },
    formula: 'horizontal: t/s + L/s², f/(s·N);  vertical: t + L, f/N;  t spacing, L rear element to pupil, s squeeze',
    source: 'Derived for thin elements; elliptical pupils: Ray, Applied Photographic Optics',
    examples: [
      {
        given: { squeeze: 2, elementSpacingMm: 80, rearToPupilMm: 60, focalLengthMm: 50, fNumber: 2.5 },
        gives: { horizontalDistanceMm: '55.00', horizontalDiameterMm: '10.00', verticalDistanceMm: '140.00', verticalDiameterMm: '20.00' },
        source: 'derived: through a front lens of −80 mm, the rear one of +160 mm and the pupil image at 55 mm',
      },
    ],
  },
  ({ squeeze, elementSpacingMm, rearToPupilMm, focalLengthMm, fNumber }): AnamorphPupil => {
    const verticalDiameterMm = focalLengthMm / fNumber;
    return {
      horizontalDistanceMm: (elementSpacingMm + rearToPupilMm / squeeze) / squeeze,
      horizontalDiameterMm: verticalDiameterMm / squeeze,
      verticalDistanceMm: elementSpacingMm + rearToPupilMm,
      verticalDiameterMm,
    };
  },
);
