import { calculator } from '../calculator.ts';
import { between, inputs, nonNegative, positive, whole } from '../inputs.ts';

export interface GearPair {
  ratio: number;
  driverPitchDiameterMm: number;
  drivenPitchDiameterMm: number;
  centreDistanceMm: number;
  contactRatio: number;
  tangentialForceN: number;
  separatingForceN: number;
}

/** A motor gear on a focus gear, at their proper centres. Below about 17 teeth see `gearLeastTeeth` first. */
export const gearPair = calculator(
  {
    name: 'focus.gearPair',
    sentence: 'Size, overlap of meshing and tooth forces of two straight spur gears of one module.',
    inputs: inputs({
      moduleMm: positive('module mm', 'module: pitch diameter over teeth; focus gears are 0.8'),
      driverTeeth: whole(3, 'teeth', 'teeth of the gear on the motor'),
      drivenTeeth: whole(3, 'teeth', 'teeth of the gear on the lens'),
      pressureAngleDeg: between(1, 45, 'deg', 'pressure angle; 20 in the standard rack'),
      torqueNm: nonNegative('N·m', 'torque on the driven gear'),
    }),
    results: {
      ratio: 'driven over driver teeth: turns of the motor for one of the ring',
      driverPitchDiameterMm: 'mm, pitch diameter of the driver',
      drivenPitchDiameterMm: 'mm, pitch diameter of the driven gear',
      centreDistanceMm: 'mm, between the axes, without backlash',
      contactRatio: 'pairs of teeth in contact on average, for full teeth without undercut; above 1.2 runs smoothly',
      tangentialForceN: 'N, along the teeth: what turns the ring, and twists the lens in its mount',
      separatingForceN: 'N, along the line of centres: what pushes motor and lens apart',
    },
    formula:
      'd = m·z;  a = (d1 + d2)/2;  ra = d/2 + m;  rb = (d/2)·cosα;  contact = (√(ra1² − rb1²) + √(ra2² − rb2²) − a·sinα)/(π·m·cosα);  ' +
      'tangential = 2T/d2;  separating = tangential·tanα',
    source: 'ISO 53 basic rack (addendum 1 m); ISO 21771; forces: Shigley, Mechanical Engineering Design',
    examples: [
      {
        given: { moduleMm: 0.8, driverTeeth: 40, drivenTeeth: 120, pressureAngleDeg: 20, torqueNm: 0.4 },
        gives: {
          ratio: '3', driverPitchDiameterMm: '32.0', drivenPitchDiameterMm: '96.0', centreDistanceMm: '64.0', contactRatio: '1.79245',
          tangentialForceN: '8.333',
        },
        source: 'derived from the ISO 53 rack; force 0.4 N·m over 48 mm',
      },
      {
        given: { moduleMm: 1, driverTeeth: 20, drivenTeeth: 40, pressureAngleDeg: 20, torqueNm: 0 },
        gives: { centreDistanceMm: '30.0', tangentialForceN: '0', separatingForceN: '0' },
        source: 'derived; without torque, no force',
      },
    ],
  },
  ({ moduleMm, driverTeeth, drivenTeeth, pressureAngleDeg, torqueNm }): GearPair => {
    const angle = (pressureAngleDeg * Math.PI) / 180;
    const driverPitchDiameterMm = moduleMm * driverTeeth;
    const drivenPitchDiameterMm = moduleMm * drivenTeeth;
    const centreDistanceMm = (driverPitchDiameterMm + drivenPitchDiameterMm) / 2;
    const tangentialForceN = (2000 * torqueNm) / drivenPitchDiameterMm;
    return {
      ratio: drivenTeeth / driverTeeth,
      driverPitchDiameterMm,
      drivenPitchDiameterMm,
      centreDistanceMm,
      contactRatio: contactRatio(driverTeeth, drivenTeeth, angle),
      tangentialForceN,
      separatingForceN: tangentialForceN * Math.tan(angle),
    };
  },
);

/** Length of the line of action between the tip circles, over the base pitch; in modules, which cancel. */
function contactRatio(driverTeeth: number, drivenTeeth: number, angle: number): number {
  const reach = (teeth: number) => Math.sqrt((teeth / 2 + 1) ** 2 - ((teeth / 2) * Math.cos(angle)) ** 2);
  const length = reach(driverTeeth) + reach(drivenTeeth) - ((driverTeeth + drivenTeeth) / 2) * Math.sin(angle);
  return length / (Math.PI * Math.cos(angle));
}
