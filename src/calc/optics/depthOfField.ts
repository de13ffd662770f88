import { calculator } from '../calculator.ts';
import { inputs, oneOf, orInfinity, positive } from '../inputs.ts';
import { imageDistanceFromSensor, needsBeyondFocalLength, objectDistanceFromSensor } from './thinLens.ts';

export interface DepthOfField {
  nearMm: number;
  farMm: number;
  totalMm: number;
  hyperfocalMm: number;
}

/** Near and far limits of a lens focused by moving it as a whole. A focuser in front wants `frontFocuserDepth` instead. */
export const depthOfField = calculator(
  {
    name: 'optics.depthOfField',
    sentence: 'Near and far limits of depth of field and the hyperfocal distance of a thin lens, exact form.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length; of an anamorphic lens the longer, vertical one, which governs'),
      fNumber: positive('ratio', 'f-number (not the T-number)'),
      focusDistanceMm: orInfinity(positive('mm', 'distance in focus, from the datum named by `from`; null: infinity')),
      circleOfConfusionMm: positive('mm', 'largest blur on the sensor that still counts as sharp'),
      from: oneOf(['lens', 'sensor'], 'datum of the distances: the lens (principal plane) or the sensor plane'),
    }),
    results: {
      nearMm: 'mm, near limit, from the same datum',
      farMm: 'mm, far limit, from the same datum; null: infinity',
      totalMm: 'mm, far less near; null where far is infinity',
      hyperfocalMm: 'mm, hyperfocal distance, always from the lens',
    },
    formula: 'H = f²/(N·c) + f;  near = s(H−f)/(H+s−2f);  far = s(H−f)/(H−s), infinite from s ≥ H on. From the sensor: D = s + v, v = s·f/(s−f)',
    source: 'Thin-lens geometry, as in Ray, Applied Photographic Optics. Handbooks print the simple form, which differs in the third digit',
    examples: [
      {
        given: { focalLengthMm: 50, fNumber: 2.8, focusDistanceMm: 3000, circleOfConfusionMm: 0.025, from: 'lens' },
        gives: { hyperfocalMm: '35764.3', nearMm: '2771.11', farMm: '3270.11' },
        source: 'derived: blur at either limit equals the circle of confusion',
      },
      {
        given: { focalLengthMm: 100, fNumber: 2.8, focusDistanceMm: 3000, circleOfConfusionMm: 0.025, from: 'lens' },
        gives: { hyperfocalMm: '142957', nearMm: '2940.31', farMm: '3062.16' },
        source: 'derived, as above',
      },
    ],
  },
  ({ focalLengthMm: f, fNumber, focusDistanceMm, circleOfConfusionMm, from }): DepthOfField => {
    const s = from === 'lens' ? focusDistanceMm : objectDistanceFromSensor(f, focusDistanceMm);
    if (from === 'lens') needsBeyondFocalLength(f, s, 'focusDistanceMm');
    const offsetMm = from === 'lens' ? 0 : imageDistanceFromSensor(f, focusDistanceMm);
    const reach = (f * f) / (fNumber * circleOfConfusionMm);
    const hyperfocalMm = reach + f;
    // s(H − f)/(H + s − 2f), divided through by s so that infinity has a value too.
    const nearMm = reach / (1 + (reach - f) / s) + offsetMm;
    const farMm = s >= hyperfocalMm ? Infinity : (s * reach) / (hyperfocalMm - s) + offsetMm;
    return { nearMm, farMm, totalMm: farMm - nearMm, hyperfocalMm };
  },
);
