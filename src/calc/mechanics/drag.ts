import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';

export interface Drag {
  forceN: number;
}

/** Wind on a rig, or the air against a vehicle. Gusts count, not the mean wind: double the speed, four times the force. */
export const drag = calculator(
  {
    name: 'mechanics.drag',
    sentence: 'Force of wind on a body.',
    inputs: inputs({
      speedMps: nonNegative('m/s', 'speed of the air past the body: wind, gust, or driving speed'),
      areaMm2: positive('mm²', 'area that faces the wind'),
      dragCoefficient: positive('ratio', 'drag coefficient; a box 1.05, a flat plate 1.2 or so'),
      airDensityKgPerM3: positive('kg/m³', 'density of the air; 1.225 at sea level and 15 °C'),
    }),
    results: { forceN: 'N, along the wind' },
    formula: 'F = ½·ρ·v²·Cd·A',
    source: 'Fluid mechanics; air as in the ISO 2533 standard atmosphere',
    examples: [
      {
        given: { speedMps: 30, areaMm2: 2e6, dragCoefficient: 0.5, airDensityKgPerM3: 1.225 }, gives: { forceN: '551.25' },
        source: 'worked example, read',
      },
    ],
  },
  ({ speedMps, areaMm2, dragCoefficient, airDensityKgPerM3 }): Drag => ({
    forceN: 0.5 * airDensityKgPerM3 * speedMps * speedMps * dragCoefficient * areaMm2 * 1e-6,
  }),
);
