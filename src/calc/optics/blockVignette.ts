import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';
import { circleOverlap } from './circleOverlap.ts';
import { ellipseInCircle } from './ellipseInCircle.ts';

export interface BlockVignette {
  rearOffsetMm: number;
  rearShare: number;
  frontOffsetXMm: number;
  frontOffsetYMm: number;
  frontShare: number;
  leastShare: number;
  mostShare: number;
}

/** Whether a front adapter sees past the taking lens at the corner of the frame. Natural falloff comes on top: `cosineFalloff`. */
export const blockVignette = calculator(
  {
    name: 'optics.blockVignette',
    sentence: 'Share of the light for a frame corner that passes the rear and the front glass of an afocal anamorphic block.',
    inputs: inputs({
      squeeze: positive('ratio', 'squeeze of the block'),
      elementSpacingMm: nonNegative('mm', 'from the front element of the block to its rear element'),
      rearToPupilMm: nonNegative('mm', 'from the rear element of the block to the entrance pupil of the taking lens'),
      focalLengthMm: positive('mm', 'focal length of the taking lens, at infinity'),
      fNumber: positive('ratio', 'f-number of the taking lens'),
      sensorWidthMm: positive('mm', 'width of the frame in use on the sensor'),
      sensorHeightMm: positive('mm', 'height of the frame in use on the sensor'),
      rearClearMm: positive('mm', 'clear diameter of the rear glass'),
      frontClearMm: positive('mm', 'clear diameter of the front glass'),
    }),
    results: {
      rearOffsetMm: 'mm, how far off the axis the corner beam crosses the rear glass',
      rearShare: 'share of it that passes there',
      frontOffsetXMm: 'mm, how far aside it crosses the front glass',
      frontOffsetYMm: 'mm, how far up it crosses the front glass',
      frontShare: 'share of it that passes there (to about 1e-6)',
      leastShare: 'share that passes both, at least',
      mostShare: 'share that passes both, at most: the smaller of the two',
    },
    formula:
      'beam at the rear: circle f/N wide, off by L·√((w/2f)² + (h/2f)²);  at the front: ellipse f/(s·N) wide and f/N high, ' +
      'off by (t + L/s)·w/2f and (t + L)·h/2f;  shares: overlap with the clear circle;  both: from rear + front − 1 to the smaller',
    source: 'Derived from thin elements, as optics.anamorphPupil; overlap: optics.circleOverlap, for the ellipse summed in strips',
    examples: [
      {
        given: {
          squeeze: 1, elementSpacingMm: 0, rearToPupilMm: 10, focalLengthMm: 10, fNumber: 5, sensorWidthMm: 1.2, sensorHeightMm: 1.6,
          rearClearMm: 2, frontClearMm: 4,
        },
        gives: { rearOffsetMm: '1.000', rearShare: '0.39100', frontShare: '1' },
        source: 'MathWorld: unit circles one apart share 1.228370, over π',
      },
    ],
  },
  (given): BlockVignette => {
    const { squeeze, elementSpacingMm: spacing, rearToPupilMm: behind, focalLengthMm } = given;
    const [across, up] = [given.sensorWidthMm / (2 * focalLengthMm), given.sensorHeightMm / (2 * focalLengthMm)];
    const beamRadiusMm = focalLengthMm / given.fNumber / 2;
    const rearOffsetMm = behind * Math.hypot(across, up);
    const frontOffsetXMm = (spacing + behind / squeeze) * across;
    const frontOffsetYMm = (spacing + behind) * up;
    const rear = circleOverlap({ radiusAMm: beamRadiusMm, radiusBMm: given.rearClearMm / 2, separationMm: rearOffsetMm });
    const beam = { halfWidthMm: beamRadiusMm / squeeze, halfHeightMm: beamRadiusMm, xMm: frontOffsetXMm, yMm: frontOffsetYMm };
    const frontShare = ellipseInCircle(beam, given.frontClearMm / 2);
    return {
      rearOffsetMm,
      rearShare: rear.fractionOfA,
      frontOffsetXMm,
      frontOffsetYMm,
      frontShare,
      leastShare: Math.max(0, rear.fractionOfA + frontShare - 1),
      mostShare: Math.min(rear.fractionOfA, frontShare),
    };
  },
);
