import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { frame } from './frame.ts';

test.each([
  // ASC Framing Decision List 2.0.1, published cases without protection; its frames are these rounded up to even pixels.
  { canvasWidthPx: 4096, canvasHeightPx: 2160, squeeze: 1, aspect: 2.39, printed: [4096, 1714] },
  { canvasWidthPx: 4096, canvasHeightPx: 3432, squeeze: 2, aspect: 2.39, printed: [4096, 3428] },
])('rounded up to even it is the published frame of $canvasWidthPx × $canvasHeightPx, squeeze $squeeze', ({ printed, ...given }) => {
  const { widthPx, heightPx } = frame(given);
  expect([widthPx, heightPx].map((side) => Math.ceil(side / 2) * 2)).toEqual(printed);
});

test.each([
  // SMPTE film apertures in inches, projected through a 2:1 lens: the printed aspects (2.3468 is cut, not rounded).
  [0.825, 0.69, 2.391304],
  [0.838, 0.7, 2.394286],
  [0.839, 0.715, 2.3468],
  [0.866, 0.732, 2.36612],
])('an aperture of %f × %f in widens to %f', (width, height, printed) => {
  const { desqueezedAspect } = frame({ canvasWidthPx: width, canvasHeightPx: height, squeeze: 2, aspect: 2.39 });
  expect(Math.abs(desqueezedAspect - printed)).toBeLessThan(1e-4);
});

test('DCI flat and scope containers are frames of 1.85 and 2.39 to within their rounding to whole pixels', () => {
  // DCI: 3996 × 2160 and 4096 × 1716. The scope number is not the quotient: it is 2.2 px off.
  expect(frame({ canvasWidthPx: 4096, canvasHeightPx: 2160, squeeze: 1, aspect: 1.85 }).widthPx).toBeCloseTo(3996, 6);
  expect(Math.abs(frame({ canvasWidthPx: 4096, canvasHeightPx: 2160, squeeze: 1, aspect: 2.39 }).heightPx - 1716)).toBeCloseTo(2.2, 1);
});

const size = fc.double({ min: 100, max: 20_000, noNaN: true });
const ratio = fc.double({ min: 0.3, max: 4, noNaN: true });

property.prop([size, size, fc.double({ min: 1, max: 2, noNaN: true }), ratio])(
  'has the aspect asked, fills one side, is centred, and cannot grow',
  (canvasWidthPx, canvasHeightPx, squeeze, aspect) => {
    const cut = frame({ canvasWidthPx, canvasHeightPx, squeeze, aspect });
    expect((cut.widthPx * squeeze) / cut.heightPx / aspect).toBeCloseTo(1, 9);
    expect(Math.min(cut.xPx, cut.yPx)).toBe(0);
    expect(cut.xPx * 2 + cut.widthPx).toBeCloseTo(canvasWidthPx, 6);
    expect(cut.yPx * 2 + cut.heightPx).toBeCloseTo(canvasHeightPx, 6);
    expect(cut.usedFraction).toBeCloseTo((cut.widthPx * cut.heightPx) / (canvasWidthPx * canvasHeightPx), 9);
  },
);

test('a canvas without height is refused where it stands', () => {
  const answer = frame.answer({ canvasWidthPx: 4096, canvasHeightPx: 0, squeeze: 2, aspect: 2.39 });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'canvasHeightPx' }] });
});
