import { calculator } from '../calculator.ts';
import { between, inputs, positive } from '../inputs.ts';

export interface ImageTurn {
  acrossPx: number;
  upPx: number;
  cornerPx: number;
}

/** What a camera that nods as a whole does to the picture: wobble, a knock, a hand on the focus knob. */
export const imageTurn = calculator(
  {
    name: 'mechanics.imageTurn',
    sentence: 'How many recorded pixels the picture moves, at its middle and at a corner, when camera and lens turn together.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length, of an anamorphic lens the vertical one'),
      squeeze: positive('ratio', 'squeeze of the lens; 1 for spherical'),
      panDeg: between(-30, 30, 'deg', 'turn to the side'),
      tiltDeg: between(-30, 30, 'deg', 'turn up or down'),
      rollDeg: between(-30, 30, 'deg', 'turn about the optical axis'),
      pixelPitchMm: positive('mm', 'from one recorded pixel to the next'),
      widthPx: positive('px', 'recorded width'),
      heightPx: positive('px', 'recorded height'),
    }),
    results: {
      acrossPx: 'px, sideways at the middle of the picture',
      upPx: 'px, up or down at the middle',
      cornerPx: 'px, at the corner that moves most',
    },
    formula:
      'across = (f/s)·tan(pan)/p;  up = f·tan(tilt)/p;  roll carries a corner (x, y) to (x·cosρ − (y/s)·sinρ, y·cosρ + s·x·sinρ), squeezed; ' +
      'corner = largest over the four, roll and shift together',
    source: 'Pinhole geometry; small turns add',
    examples: [
      {
        given: { focalLengthMm: 50, squeeze: 1, panDeg: 0, tiltDeg: 0.1, rollDeg: 0, pixelPitchMm: 0.005, widthPx: 4096, heightPx: 2160 },
        gives: { acrossPx: '0', upPx: '17.45', cornerPx: '17.45' },
        source: 'derived: 50 mm × 0.0017453 over 0.005 mm',
      },
      {
        given: { focalLengthMm: 50, squeeze: 1, panDeg: 0, tiltDeg: 0, rollDeg: 0.1, pixelPitchMm: 0.005, widthPx: 4096, heightPx: 3072 },
        gives: { cornerPx: '4.468' },
        source: 'derived: half the diagonal, 2560 px, × 0.0017453',
      },
    ],
  },
  ({ focalLengthMm, squeeze: s, panDeg, tiltDeg, rollDeg, pixelPitchMm, widthPx, heightPx }): ImageTurn => {
    const radians = (deg: number) => (deg * Math.PI) / 180;
    const acrossPx = ((focalLengthMm / s) * Math.tan(radians(panDeg))) / pixelPitchMm;
    const upPx = (focalLengthMm * Math.tan(radians(tiltDeg))) / pixelPitchMm;
    const sine = Math.sin(radians(rollDeg));
    // 1 − cosρ without the difference.
    const versine = 2 * Math.sin(radians(rollDeg) / 2) ** 2;
    const corners = [[1, 1], [1, -1], [-1, 1], [-1, -1]].map(([i, j]) => {
      const [x, y] = [(i! * widthPx) / 2, (j! * heightPx) / 2];
      return Math.hypot(acrossPx - versine * x - (y / s) * sine, upPx - versine * y + s * x * sine);
    });
    return { acrossPx, upPx, cornerPx: Math.max(...corners) };
  },
);
