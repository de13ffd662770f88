import { calculator } from '../calculator.ts';
import { between, inputs, positive } from '../inputs.ts';

export interface BlockYaw {
  shiftMm: number;
  shiftPx: number;
}

/**
 * What an afocal block that yaws in front of the taking lens does. Nodding does nothing: upright it has no power. Its roll
 * is `optics.squeezeSkew`.
 */
export const blockYaw = calculator(
  {
    name: 'mechanics.blockYaw',
    sentence: 'How far the picture moves sideways when an anamorphic block in front of the taking lens turns to the side.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length of the taking lens'),
      squeeze: positive('ratio', 'squeeze of the block'),
      yawDeg: between(-10, 10, 'deg', 'turn of the block to the side, against the sensor'),
      pixelPitchMm: positive('mm', 'from one recorded pixel to the next'),
    }),
    results: { shiftMm: 'mm on the sensor, sideways', shiftPx: 'px recorded; once widened, the squeeze times as many' },
    formula: 'shift = f·θ·(1 − 1/q): a ray that meets the block at θ leaves it at θ/q, so the picture turns by the rest',
    source: 'Derived, small angles: an afocal system divides angles by its squeeze; that the taking lens turns with it does nothing',
    examples: [
      {
        given: { focalLengthMm: 85, squeeze: 2, yawDeg: 0.1, pixelPitchMm: 0.005 }, gives: { shiftMm: '0.07418', shiftPx: '14.84' },
        source: 'derived: 85 × 0.00174533 × 0.5',
      },
      {
        given: { focalLengthMm: 85, squeeze: 1, yawDeg: 0.1, pixelPitchMm: 0.005 }, gives: { shiftMm: '0', shiftPx: '0' },
        source: 'derived: a flat glass turns nothing',
      },
    ],
  },
  ({ focalLengthMm, squeeze, yawDeg, pixelPitchMm }): BlockYaw => {
    const shiftMm = (focalLengthMm * yawDeg * Math.PI * (1 - 1 / squeeze)) / 180;
    return { shiftMm, shiftPx: shiftMm / pixelPitchMm };
  },
);
