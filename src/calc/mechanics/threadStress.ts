import { NoAnswer, calculator } from '../calculator.ts';
import { inputs, nonNegative, oneOf, positive } from '../inputs.ts';

export interface ThreadStress {
  areaMm2: number;
  stressMPa: number;
}

/** Pull in the core of a screw. The weakest place is commonly the soft thread it goes into. */
export const threadStress = calculator(
  {
    name: 'mechanics.threadStress',
    sentence: 'Stress area of a screw thread, and the stress a force sets up in it.',
    inputs: inputs({
      series: oneOf(['inch', 'metric'], 'inch: unified threads (UNC, UNF); metric: ISO threads'),
      diameterMm: positive('mm', 'nominal diameter; 6.35 for 1/4 in, 9.525 for 3/8 in'),
      pitchMm: positive('mm', 'pitch; 25.4 over the threads an inch'),
      forceN: nonNegative('N', 'pull in the screw'),
    }),
    results: { areaMm2: 'mm², stress area', stressMPa: 'MPa' },
    formula: 'inch: A = (π/4)·(D − 0.9743·p)²;  metric: A = (π/4)·(D − 0.9382·p)²;  stress = F/A',
    source: 'ASME B1.1 (0.9743/n in); ISO 898-1 ((d2 + d3)/2, which is D − 0.9382 p)',
    examples: [
      { given: { series: 'inch', diameterMm: 6.35, pitchMm: 1.27, forceN: 0 }, gives: { areaMm2: '20.5' }, source: '1/4-20: ASME formula' },
      {
        given: { series: 'inch', diameterMm: 9.525, pitchMm: 1.5875, forceN: 5000 }, gives: { areaMm2: '50.0', stressMPa: '100' },
        source: '3/8-16: ASME formula',
      },
      { given: { series: 'metric', diameterMm: 3, pitchMm: 0.5, forceN: 0 }, gives: { areaMm2: '5.03' }, source: 'ISO 898-1' },
      { given: { series: 'metric', diameterMm: 4, pitchMm: 0.7, forceN: 0 }, gives: { areaMm2: '8.78' }, source: 'ISO 898-1' },
      { given: { series: 'metric', diameterMm: 5, pitchMm: 0.8, forceN: 0 }, gives: { areaMm2: '14.2' }, source: 'ISO 898-1' },
      { given: { series: 'metric', diameterMm: 6, pitchMm: 1, forceN: 0 }, gives: { areaMm2: '20.1' }, source: 'ISO 898-1' },
    ],
  },
  ({ series, diameterMm, pitchMm, forceN }): ThreadStress => {
    const core = diameterMm - (series === 'inch' ? 0.9743 : 0.9382) * pitchMm;
    if (core <= 0) throw new NoAnswer(
      'pitchMm', `Found ${pitchMm} mm, which leaves nothing of a screw of ${diameterMm} mm. Give 25.4 over the threads an inch, or the metric pitch.`,
    );
    const areaMm2 = (Math.PI / 4) * core * core;
    return { areaMm2, stressMPa: forceN / areaMm2 };
  },
);
