import { calculator } from '../calculator.ts';
import { finite, inputs, nonNegative, positive } from '../inputs.ts';

export interface Expansion {
  growthMm: number;
}

/** What warmth does to a fit: a printed ring on a metal barrel closes or opens by the difference of two of these. */
export const expansion = calculator(
  {
    name: 'mechanics.expansion',
    sentence: 'How much a length or a diameter grows as it warms.',
    inputs: inputs({
      lengthMm: positive('mm', 'length or diameter'),
      expansionPerMillionK: nonNegative('ratio', 'expansion in millionths a kelvin; aluminium 23.6, steel 11.7, ABS 70 to 90'),
      warmerC: finite('°C', 'how many degrees warmer; negative: colder'),
    }),
    results: { growthMm: 'mm; negative: it shrinks' },
    formula: 'growth = L·α·ΔT',
    source: 'Linear expansion; coefficients in standards/materials',
    examples: [
      { given: { lengthMm: 95, expansionPerMillionK: 23.6, warmerC: 40 }, gives: { growthMm: '0.090' }, source: 'derived: aluminium' },
      { given: { lengthMm: 95, expansionPerMillionK: 73.8, warmerC: 40 }, gives: { growthMm: '0.280' }, source: 'derived: ABS' },
    ],
  },
  ({ lengthMm, expansionPerMillionK, warmerC }): Expansion => ({ growthMm: lengthMm * expansionPerMillionK * 1e-6 * warmerC }),
);
