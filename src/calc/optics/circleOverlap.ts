import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';

export interface CircleOverlap {
  areaMm2: number;
  fractionOfA: number;
}

/** What passes two round openings at an angle: the beam of a frame corner and the rim of a glass. */
export const circleOverlap = calculator(
  {
    name: 'optics.circleOverlap',
    sentence: 'Area common to two circles, and the share of the first that it is.',
    inputs: inputs({
      radiusAMm: positive('mm', 'radius of the first circle, such as the beam'),
      radiusBMm: positive('mm', 'radius of the second circle, such as the clear opening'),
      separationMm: nonNegative('mm', 'distance between the centres'),
    }),
    results: { areaMm2: 'mm², common area; 0 where they do not meet', fractionOfA: 'common area over the area of the first circle' },
    formula:
      'a²(α − sinα·cosα) + b²(β − sinβ·cosβ), cosα = (d² + a² − b²)/(2da), cosβ = (d² + b² − a²)/(2db);  ' +
      'the smaller circle where one holds the other',
    source:
      'Weisstein, Circle-Circle Intersection, MathWorld; the angles by sin²(α/2) = ((b − d + a)(b + d − a))/(4da), which keeps digits near touching',
    examples: [
      { given: { radiusAMm: 1, radiusBMm: 1, separationMm: 1 }, gives: { areaMm2: '1.228370' }, source: 'MathWorld formula' },
      { given: { radiusAMm: 3, radiusBMm: 2, separationMm: 4 }, gives: { areaMm2: '1.989792' }, source: 'MathWorld formula' },
      { given: { radiusAMm: 1, radiusBMm: 1, separationMm: 0.8079455065990344 }, gives: { fractionOfA: '0.5000000000' }, source: 'OEIS A133741' },
    ],
  },
  ({ radiusAMm: a, radiusBMm: b, separationMm: d }): CircleOverlap => {
    const areaMm2 = commonArea(a, b, d);
    return { areaMm2, fractionOfA: Math.min(1, areaMm2 / (Math.PI * a * a)) };
  },
);

function commonArea(a: number, b: number, d: number): number {
  if (d >= a + b) return 0;
  if (d <= Math.abs(a - b)) return Math.PI * Math.min(a, b) ** 2;
  return segmentArea(a, b, d) + segmentArea(b, a, d);
}

/** The part of the circle of radius `own` beyond the common chord. */
function segmentArea(own: number, other: number, d: number): number {
  // d less the difference of the radii, in this order: a tiny d would be lost in the sum of d and a radius.
  const sineOfHalf = Math.sqrt(((own + other - d) / (4 * own)) * ((d - (own - other)) / d));
  const angle = 2 * Math.asin(Math.min(1, sineOfHalf));
  return own * own * (angle - Math.sin(angle) * Math.cos(angle));
}
