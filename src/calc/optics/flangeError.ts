import { calculator } from '../calculator.ts';
import { finite, inputs, positive } from '../inputs.ts';
import { type InfinityGap, leftOver } from './infinityGap.ts';

export interface FlangeError extends InfinityGap {
  infinityMarkFocusMm: number;
  reachesInfinity: boolean;
}

/** A lens that stands too far out never reaches infinity; one that stands too far in passes it, and its marks read long. */
export const flangeError = calculator(
  {
    name: 'optics.flangeError',
    sentence: 'Where the infinity mark of a lens really focuses on a body whose mount stands off, and what that leaves behind a block.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length of the lens'),
      fNumber: positive('ratio', 'f-number of the lens'),
      squeeze: positive('ratio', 'squeeze of an afocal block in front; 1 for none'),
      flangeErrorMm: finite('mm', 'flange distance as mounted less what the lens is set for; positive: it stands too far out'),
      circleOfConfusionMm: positive('mm', 'largest blur on the sensor that still counts as sharp'),
    }),
    results: {
      infinityMarkFocusMm: 'mm, from the lens, in focus at the infinity mark; null: infinity, or past it',
      reachesInfinity: 'whether the lens can focus on infinity at all',
      defocusMm: 'mm, defocus that no setting of a focuser in front takes away, as in optics.infinityGap',
      allowedMm: 'mm, defocus that still counts as sharp',
      use: 'defocus over allowed; up to 1 it is sharp',
    },
    formula: 'e = flange error;  focus = f + f²/e where e > 0;  defocus = e·|q − 1|;  allowed = c·N',
    source: "Newton's form of the thin-lens equation; the rest as in optics.infinityGap",
    examples: [
      {
        given: { focalLengthMm: 50, fNumber: 2, squeeze: 2, flangeErrorMm: 0.05, circleOfConfusionMm: 0.025 },
        gives: { infinityMarkFocusMm: '50050', reachesInfinity: false, defocusMm: '0.05', use: '1.00' },
        source: 'derived: 2500/0.05 = 50 m beyond the focal length',
      },
      {
        given: { focalLengthMm: 50, fNumber: 2, squeeze: 1.5, flangeErrorMm: -0.02, circleOfConfusionMm: 0.025 },
        gives: { infinityMarkFocusMm: null, reachesInfinity: true, defocusMm: '0.010', use: '0.20' },
        source: 'derived',
      },
    ],
  },
  ({ focalLengthMm, flangeErrorMm, ...at }): FlangeError => ({
    infinityMarkFocusMm: flangeErrorMm > 0 ? focalLengthMm + focalLengthMm ** 2 / flangeErrorMm : Infinity,
    reachesInfinity: flangeErrorMm <= 0,
    ...leftOver(flangeErrorMm, at),
  }),
);
