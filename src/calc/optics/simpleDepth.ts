import { calculator } from '../calculator.ts';
import { inputs, orInfinity, positive } from '../inputs.ts';

export interface SimpleDepth {
  nearMm: number;
  farMm: number;
  totalMm: number;
  hyperfocalMm: number;
}

/** For comparing with printed tables. It flatters depth at close range: where a verdict hangs on it, use `depthOfField`. */
export const simpleDepth = calculator(
  {
    name: 'optics.simpleDepth',
    sentence: 'Depth of field and hyperfocal distance in the simple form that handbooks and printed tables use.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length; of an anamorphic lens the longer, vertical one'),
      fNumber: positive('ratio', 'f-number (not the T-number)'),
      focusDistanceMm: orInfinity(positive('mm', 'distance in focus, from the lens; null: infinity')),
      circleOfConfusionMm: positive('mm', 'largest blur on the sensor that still counts as sharp'),
    }),
    results: {
      nearMm: 'mm, near limit, from the lens',
      farMm: 'mm, far limit, from the lens; null: infinity',
      totalMm: 'mm, far less near; null where far is infinity',
      hyperfocalMm: 'mm, hyperfocal distance, the focal length left out',
    },
    formula: 'H0 = f²/(N·c);  near = H0·s/(H0 + s);  far = H0·s/(H0 − s), infinite from s ≥ H0 on',
    source: 'US Army course SS0507; US Navy NAVEDTRA 14209; Sinclair, Handbook of Photography. It takes s − f for s',
    examples: [
      {
        given: { focalLengthMm: 50.8, fNumber: 8, focusDistanceMm: 6350, circleOfConfusionMm: 0.0508 },
        gives: { hyperfocalMm: '6350', nearMm: '3175', farMm: null, totalMm: null },
        source: 'US Army course SS0507, event 10: 2 in, f/8, 0.002 in → H 20.8 ft, near limit 10.4 ft',
      },
    ],
  },
  ({ focalLengthMm, fNumber, focusDistanceMm: s, circleOfConfusionMm }): SimpleDepth => {
    const hyperfocalMm = focalLengthMm ** 2 / (fNumber * circleOfConfusionMm);
    const nearMm = hyperfocalMm / (hyperfocalMm / s + 1);
    const farMm = s >= hyperfocalMm ? Infinity : (hyperfocalMm * s) / (hyperfocalMm - s);
    return { nearMm, farMm, totalMm: farMm - nearMm, hyperfocalMm };
  },
);
