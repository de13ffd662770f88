import { calculator } from '../calculator.ts';
import { finite, inputs, nonNegative, positive } from '../inputs.ts';

export interface ImageShift {
  shiftPx: number;
}

/**
 * What a lens that is pushed sideways does to the picture. A lens that tilts about its mount moves its front principal
 * point by the tilt times its distance: give that.
 */
export const imageShift = calculator(
  {
    name: 'mechanics.imageShift',
    sentence: 'How many pixels the picture jumps when the lens shifts sideways against the sensor.',
    inputs: inputs({
      magnification: nonNegative('ratio', 'size of the image over size of the subject; 0 at infinity'),
      shiftMm: finite('mm', 'shift of the lens across its axis'),
      pixelPitchMm: positive('mm', 'from one recorded pixel to the next'),
    }),
    results: { shiftPx: 'px, shift of the picture' },
    formula: 'shift = (1 + m)·δ/p',
    source: 'Thin-lens geometry: subject, lens centre and image lie in one line, so the image goes δ·(u + v)/u, and v/u = m',
    examples: [
      {
        given: { magnification: 0, shiftMm: 0.02, pixelPitchMm: 0.005 }, gives: { shiftPx: '4.0' },
        source: 'derived: at infinity the image goes with the lens',
      },
      { given: { magnification: 1, shiftMm: 0.02, pixelPitchMm: 0.005 }, gives: { shiftPx: '8.0' }, source: 'derived: at life size by twice that' },
    ],
  },
  ({ magnification, shiftMm, pixelPitchMm }): ImageShift => ({ shiftPx: ((1 + magnification) * shiftMm) / pixelPitchMm }),
);
