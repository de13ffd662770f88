import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { blockYaw } from './blockYaw.ts';
import { imageTurn } from './imageTurn.ts';
import { rollingShutterWobble } from './rollingShutterWobble.ts';

const still = { focalLengthMm: 50, squeeze: 2, panDeg: 0, tiltDeg: 0, rollDeg: 0, pixelPitchMm: 0.005, widthPx: 4096, heightPx: 3432 };

test('sideways, a squeezed picture moves by half as many pixels as an unsqueezed one', () => {
  const pan = { ...still, panDeg: 0.1 };
  expect(imageTurn(pan).acrossPx).toBeCloseTo(imageTurn({ ...pan, squeeze: 1 }).acrossPx / 2, 9);
  expect(imageTurn(still)).toEqual({ acrossPx: 0, upPx: 0, cornerPx: 0 });
});

property.prop([fc.double({ min: 1, max: 2, noNaN: true }), fc.double({ min: -20, max: 20, noNaN: true })])(
  'a roll carries the widened corner along its circle: 2·r·sin(ρ/2), whatever the squeeze',
  (squeeze, rollDeg) => {
    // Square corners of the widened picture move alike; take the shift apart again.
    const { cornerPx } = imageTurn({ ...still, squeeze, rollDeg });
    const radius = Math.hypot(squeeze * still.widthPx, still.heightPx) / 2;
    const chord = 2 * radius * Math.sin((Math.abs(rollDeg) * Math.PI) / 360);
    expect(cornerPx).toBeLessThanOrEqual(chord * (1 + 1e-9));
    expect(cornerPx).toBeGreaterThanOrEqual((chord / squeeze) * (1 - 1e-9));
    if (squeeze === 1) expect(cornerPx).toBeCloseTo(chord, 6);
  },
);

test('a block of squeeze 2 that yaws moves the picture half as far as the camera panning with it would', () => {
  const { shiftPx } = blockYaw({ focalLengthMm: 50, squeeze: 2, yawDeg: 0.05, pixelPitchMm: 0.005 });
  expect(shiftPx).toBeCloseTo(imageTurn({ ...still, squeeze: 1, panDeg: 0.05 }).acrossPx / 2, 4);
});

const hertz = fc.double({ min: 0.5, max: 200, noNaN: true });
const readout = fc.double({ min: 0, max: 40, noNaN: true });
const phases = fc.double({ min: 0, max: 6.28, noNaN: true });

property.prop([hertz, readout, phases])(
  'no two moments of a readout differ by more than the bend, and some come near',
  (frequencyHz, readoutMs, phase) => {
    const { bendPx } = rollingShutterWobble({ amplitudePx: 1, frequencyHz, readoutMs, exposureMs: 0, frameRateHz: 24 });
    const at = (seconds: number, from: number) => Math.sin(2 * Math.PI * frequencyHz * seconds + from);
    const spread = (from: number) => {
      const seen = Array.from({ length: 401 }, (_, k) => at((readoutMs * 1e-3 * k) / 400, from));
      return Math.max(...seen) - Math.min(...seen);
    };
    expect(spread(phase)).toBeLessThanOrEqual(bendPx + 1e-9);
    const most = Math.max(...Array.from({ length: 100 }, (_, k) => spread((2 * Math.PI * k) / 100)));
    expect(most).toBeGreaterThanOrEqual(bendPx * 0.98);
  },
);

test('slow wobble leans by its speed times the readout', () => {
  const { bendPx } = rollingShutterWobble({ amplitudePx: 5, frequencyHz: 2, readoutMs: 10, exposureMs: 0, frameRateHz: 24 });
  expect(bendPx / (2 * Math.PI * 2 * 5 * 0.01)).toBeCloseTo(1, 2);
});
