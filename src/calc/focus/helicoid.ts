import { calculator } from '../calculator.ts';
import { inputs, orInfinity, positive } from '../inputs.ts';
import { needsBeyondFocalLength } from '../optics/thinLens.ts';

export interface Helicoid {
  extensionMm: number;
  angleDeg: number;
}

/** A lens that focuses by moving as a whole. Floating groups and front focusers have no such law: measure their marks. */
export const helicoid = calculator(
  {
    name: 'focus.helicoid',
    sentence: 'How far a lens moves out from infinity to focus at a distance, and how far its ring turns for that.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length; of an anamorphic lens the longer, vertical one'),
      focusDistanceMm: orInfinity(positive('mm', 'distance in focus, from the lens; null: infinity')),
      leadMm: positive('mm', 'lead of the helicoid: its travel in one turn, all starts together'),
    }),
    results: { extensionMm: 'mm, travel from infinity', angleDeg: 'deg, turn of the ring from infinity' },
    formula: 'e = f²/(s − f);  angle = 360·e/lead',
    source: "Newton's form of the thin-lens equation, as in Ray, Applied Photographic Optics",
    examples: [
      {
        given: { focalLengthMm: 50, focusDistanceMm: 450, leadMm: 25 },
        gives: { extensionMm: '6.25', angleDeg: '90.0' },
        source: 'derived: 2500/400; magnification e/f = 0.125',
      },
      {
        given: { focalLengthMm: 50, focusDistanceMm: null, leadMm: 25 },
        gives: { extensionMm: '0', angleDeg: '0' },
        source: 'infinity, by definition',
      },
    ],
  },
  ({ focalLengthMm, focusDistanceMm, leadMm }): Helicoid => {
    needsBeyondFocalLength(focalLengthMm, focusDistanceMm, 'focusDistanceMm');
    const extensionMm = focalLengthMm ** 2 / (focusDistanceMm - focalLengthMm);
    return { extensionMm, angleDeg: (360 * extensionMm) / leadMm };
  },
);
