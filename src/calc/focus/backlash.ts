import { calculator } from '../calculator.ts';
import { between, finite, inputs, positive } from '../inputs.ts';

export interface Backlash {
  backlashMm: number;
  playDeg: number;
}

/** Play from a motor set too far off. Pressed in too far the gears bind, and there is none to reckon. */
export const backlash = calculator(
  {
    name: 'focus.backlash',
    sentence: 'Play that opens between two spur gears when their centres stand further apart than they should.',
    inputs: inputs({
      centreErrorMm: finite('mm', 'how far the centres stand apart beyond the proper distance; negative: too close'),
      pressureAngleDeg: between(1, 45, 'deg', 'pressure angle; 20 in the standard rack'),
      pitchDiameterMm: positive('mm', 'pitch diameter of the gear whose play is wanted, such as the lens gear'),
    }),
    results: {
      backlashMm: 'mm, play along the pitch circle; 0 or less: the gears bind',
      playDeg: 'deg, turn of that gear while the other is held',
    },
    formula: 'backlash = 2·Δa·tanα;  play = 360·backlash/(π·d)',
    source: 'First order in Δa, as in textbooks of gearing',
    examples: [
      {
        given: { centreErrorMm: 0.1, pressureAngleDeg: 20, pitchDiameterMm: 96 },
        gives: { backlashMm: '0.0728', playDeg: '0.087' },
        source: 'published: 0.1 mm → 0.0728 mm; turn derived, 360·0.0728/(π·96)',
      },
    ],
  },
  ({ centreErrorMm, pressureAngleDeg, pitchDiameterMm }): Backlash => {
    const backlashMm = 2 * centreErrorMm * Math.tan((pressureAngleDeg * Math.PI) / 180);
    return { backlashMm, playDeg: (360 * backlashMm) / (Math.PI * pitchDiameterMm) };
  },
);
