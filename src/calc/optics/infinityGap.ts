import { calculator } from '../calculator.ts';
import { inputs, orInfinity, positive } from '../inputs.ts';
import { needsBeyondFocalLength } from './thinLens.ts';

export interface InfinityGap {
  defocusMm: number;
  allowedMm: number;
  use: number;
}

/** A focuser in front of an anamorphic block can put one meridian right, or share the fault between both, but not end it. */
export const infinityGap = calculator(
  {
    name: 'optics.infinityGap',
    sentence: 'What stays out of focus, at best, when the taking lens behind an afocal block is not truly at infinity.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length of the taking lens'),
      fNumber: positive('ratio', 'f-number of the taking lens'),
      squeeze: positive('ratio', 'squeeze of the block'),
      takingLensFocusMm: orInfinity(positive('mm', 'distance the taking lens is really focused at, from the lens; null: infinity')),
      circleOfConfusionMm: positive('mm', 'largest blur on the sensor that still counts as sharp'),
    }),
    results: {
      defocusMm: 'mm, defocus at the sensor that no setting of the focuser takes away, equal in both meridians once widened',
      allowedMm: 'mm, defocus that still counts as sharp',
      use: 'defocus over allowed; up to 1 it is sharp',
    },
    formula: 'e = f²/(s − f), 0 at infinity;  defocus = e·|q − 1|, q the squeeze;  allowed = c·N;  use = defocus/allowed',
    source:
      'Derived: a focuser that moves the vertical image by x moves the horizontal one by x/q²; the blurs |e − x|/N and, widened, q·|e − x/q²|/N ' +
      'are least together at x = q·e',
    examples: [
      {
        given: { focalLengthMm: 50, fNumber: 2, squeeze: 2, takingLensFocusMm: 50_050, circleOfConfusionMm: 0.025 },
        gives: { defocusMm: '0.05', allowedMm: '0.05', use: '1.00' },
        source: 'derived: e = 2500/50000 = 0.05 mm',
      },
      {
        given: { focalLengthMm: 50, fNumber: 2, squeeze: 2, takingLensFocusMm: null, circleOfConfusionMm: 0.025 },
        gives: { defocusMm: '0', use: '0' },
        source: 'at infinity nothing is left over',
      },
    ],
  },
  ({ focalLengthMm, fNumber, squeeze, takingLensFocusMm, circleOfConfusionMm }): InfinityGap => {
    needsBeyondFocalLength(focalLengthMm, takingLensFocusMm, 'takingLensFocusMm');
    return leftOver(focalLengthMm ** 2 / (takingLensFocusMm - focalLengthMm), { fNumber, squeeze, circleOfConfusionMm });
  },
);

/** The same for a known error of the image plane, either way, such as a wrong flange distance. */
export function leftOver(errorMm: number, at: { fNumber: number; squeeze: number; circleOfConfusionMm: number }): InfinityGap {
  const defocusMm = Math.abs(errorMm * (at.squeeze - 1));
  const allowedMm = at.circleOfConfusionMm * at.fNumber;
  return { defocusMm, allowedMm, use: defocusMm / allowedMm };
}
