import { awgDiameterMm } from '../../standards/wireGauges.ts';
import { calculator } from '../calculator.ts';
import { between, inputs, nonNegative, whole } from '../inputs.ts';
import { copperResistance } from './copperResistance.ts';

export interface Wire {
  diameterMm: number;
  areaMm2: number;
  resistanceOhm: number;
}

/** A solid copper wire by its gauge. */
export const wire = calculator(
  {
    name: 'power.wire',
    sentence: 'Diameter, area and resistance of one solid copper conductor, one way, by American wire gauge.',
    inputs: inputs({
      awg: whole(-3, 'count', 'wire gauge; 0 is 0, −1 is 00, −3 is 0000').max(56),
      lengthM: nonNegative('m', 'length of the one conductor'),
      temperatureC: between(-100, 250, '°C', 'temperature of the copper'),
    }),
    results: { diameterMm: 'mm', areaMm2: 'mm²', resistanceOhm: 'ohm, one way; stranded wire of the same gauge has 2 to 5 % more (from memory)' },
    formula: 'd = 0.127·92^((36−n)/39) mm; R = ρ·L/A·(1 + 0.00393·(T − 20)), ρ = 1/58 µΩ·m',
    source: 'ASTM B258; IEC 60028',
    examples: [
      { given: { awg: 18, lengthM: 304.8, temperatureC: 20 }, gives: { diameterMm: '1.02369' }, source: 'ASTM B258' },
      { given: { awg: 22, lengthM: 1, temperatureC: 20 }, gives: { diameterMm: '0.64380' }, source: 'ASTM B258' },
      { given: { awg: 28, lengthM: 1, temperatureC: 20 }, gives: { diameterMm: '0.32109' }, source: 'ASTM B258' },
      {
        given: { awg: 18, lengthM: 6, temperatureC: 20 }, gives: { resistanceOhm: '0.125689' },
        source: 'derived: 3 m there and back, 5 A drop 0.62845 V',
      },
    ],
  },
  ({ awg, lengthM, temperatureC }): Wire => {
    const diameterMm = awgDiameterMm(awg);
    const areaMm2 = (Math.PI / 4) * diameterMm ** 2;
    return { diameterMm, areaMm2, resistanceOhm: copperResistance({ areaMm2, lengthM, temperatureC }) };
  },
);
