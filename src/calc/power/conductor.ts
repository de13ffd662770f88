import { calculator } from '../calculator.ts';
import { between, inputs, nonNegative, positive } from '../inputs.ts';
import { copperResistance } from './copperResistance.ts';

export interface Conductor {
  resistanceOhm: number;
}

/** A copper conductor by its area, as metric cables are marked. */
export const conductor = calculator(
  {
    name: 'power.conductor',
    sentence: 'Resistance of one copper conductor, one way, by its area.',
    inputs: inputs({
      areaMm2: positive('mm²', 'copper area of one conductor'),
      lengthM: nonNegative('m', 'length of the one conductor'),
      temperatureC: between(-100, 250, '°C', 'temperature of the copper'),
    }),
    results: { resistanceOhm: 'ohm, one way' },
    formula: 'R = ρ·L/A·(1 + 0.00393·(T − 20)), ρ = 1/58 µΩ·m',
    source: 'IEC 60028. Flexible cable is sold by resistance: of one nominal area it may have 13 to 16 % more than this (IEC 60228, class 5)',
    examples: [{ given: { areaMm2: 1, lengthM: 58, temperatureC: 20 }, gives: { resistanceOhm: '1.0000' },
      source: 'IEC 60028: 1/58 ohm for 1 m of 1 mm²' }],
  },
  ({ areaMm2, lengthM, temperatureC }): Conductor => ({ resistanceOhm: copperResistance({ areaMm2, lengthM, temperatureC }) }),
);
