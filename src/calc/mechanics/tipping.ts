import * as z from 'zod';
import { NoAnswer, calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';
import { type Spot, convexHull, distanceToEdge, insideEdge } from './convexHull.ts';
import { weightN } from './gravity.ts';
import { inSpace } from './places.ts';

export interface Tipping {
  marginMm: number;
  tipsAtN: number;
}

/**
 * Legs and stands on hard level ground. An estimate: soft ground, moving people and cables take from it.
 * `mechanics.standTipping` for feet on a circle.
 */
export const tipping = calculator(
  {
    name: 'mechanics.tipping',
    sentence: 'How far the centre of mass stands inside the feet, and the push that tips it over.',
    inputs: inputs({
      supportMm: z.array(z.tuple([z.number(), z.number()])).meta({ unit: 'mm', description: 'places of the feet on the floor [x, z], in any order' }),
      massG: positive('g', 'mass of all that stands on them'),
      centreMm: inSpace('mm', 'centre of mass; its height has no part in this'),
      atHeightMm: positive('mm', 'height above the floor at which it is pushed'),
    }),
    results: {
      marginMm: 'mm, from the foot of the centre to the nearest edge of the feet; negative: outside, it falls',
      tipsAtN: 'N, least horizontal push at that height that tips it; negative: the pull that just keeps it from falling',
    },
    formula: 'edges of the convex hull of the feet; d = distance of (x, z) inside each edge;  margin = min d;  tipsAt = min m·g·d/h',
    source: 'Statics of rigid bodies; g = 9.80665 m/s²',
    examples: [
      {
        given: { supportMm: [[0, 500], [433.0127, -250], [-433.0127, -250]], massG: 15_000, centreMm: [0, 1200, 0], atHeightMm: 1500 },
        gives: { marginMm: '250.0', tipsAtN: '24.5' },
        source: 'derived: three feet on a circle of 0.5 m, edge at half of it, 15 kg, 1.5 m',
      },
    ],
  },
  ({ supportMm, massG, centreMm, atHeightMm }): Tipping => {
    const hull = convexHull(supportMm);
    if (hull.length < 3) throw new NoAnswer('supportMm', 'These feet stand in one line, on which nothing stays up. Give three that do not.');
    const foot: Spot = [centreMm[0], centreMm[2]];
    const edges = hull.map((from, i) => [from, hull[(i + 1) % hull.length]!] as const);
    const inside = Math.min(...edges.map(([from, to]) => insideEdge(foot, from, to)));
    const nearest = Math.min(...edges.map(([from, to]) => distanceToEdge(foot, from, to)));
    return { marginMm: inside < 0 ? -nearest : nearest, tipsAtN: (weightN(massG) * inside) / atHeightMm };
  },
);
