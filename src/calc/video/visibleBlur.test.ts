import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { shownPicture } from './shownPicture.ts';
import { visibleBlur } from './visibleBlur.ts';

type Seen = Parameters<typeof visibleBlur>[0];
const onCamera: Seen = { sensorHeightMm: 18, pictureHeightPx: 1080, shownHeightMm: 46, panelPixelMm: 0.0576, zoom: 1, viewingDistanceMm: 500,
  acuityArcmin: 1 };

test('lines of 1080 part by an arcminute at about 3.2 picture heights (ITU-R BT.500 3.2 H, Poynton 3.1)', () => {
  const lineAt = (heights: number) => visibleBlur({ ...onCamera, sensorHeightMm: 1, shownHeightMm: 1000, panelPixelMm: 1e-6, pictureHeightPx: 1e9,
    viewingDistanceMm: 1000 * heights });
  expect(lineAt(3.18).blurMm * 1080).toBeCloseTo(1, 2);
  expect(lineAt(3.2).limitedBy).toBe('eye');
});

test('the parts by hand: 1/60 mm of picture, 0.02254 of panel, 0.05691 of eye, 0.06344 together', () => {
  const { blurMm, limitedBy } = visibleBlur(onCamera);
  expect(blurMm).toBeCloseTo(0.06344, 5); // a pocket calculator's sum, 500 mm · 0.00029089 rad · 18/46 for the eye
  expect(limitedBy).toBe('eye');
});

test('a punch-in leaves what the picture lost', () => {
  const { blurMm, limitedBy } = visibleBlur({ ...onCamera, zoom: 1e6 });
  expect(limitedBy).toBe('picture');
  expect(blurMm).toBeCloseTo(18 / 1080, 6);
});

const seen = fc.record({
  sensorHeightMm: fc.double({ min: 5, max: 40, noNaN: true }), pictureHeightPx: fc.integer({ min: 200, max: 4000 }),
  shownHeightMm: fc.double({ min: 20, max: 500, noNaN: true }),
  panelPixelMm: fc.double({ min: 0.02, max: 0.5, noNaN: true }), zoom: fc.constantFrom(1, 2, 4),
  viewingDistanceMm: fc.double({ min: 200, max: 3000, noNaN: true }),
  acuityArcmin: fc.double({ min: 0.5, max: 3, noNaN: true }),
});
property.prop([seen])('it never sees more with less zoom, farther eyes or fewer lines', (one) => {
  const { blurMm } = visibleBlur(one);
  expect(visibleBlur({ ...one, zoom: one.zoom * 2 }).blurMm).toBeLessThan(blurMm);
  expect(visibleBlur({ ...one, viewingDistanceMm: one.viewingDistanceMm * 2 }).blurMm).toBeGreaterThan(blurMm);
  expect(visibleBlur({ ...one, pictureHeightPx: one.pictureHeightPx * 2 }).blurMm).toBeLessThan(blurMm);
});

test('a 2.39 picture on a 16:9 panel of 5 inches keeps three quarters of its height', () => {
  const panel = { diagonalMm: 127, panelWidthPx: 1920, panelHeightPx: 1080, sensorWidthMm: 2.39, sensorHeightMm: 1, squeeze: 1 };
  const shown = shownPicture(panel);
  expect(shown.shownHeightMm / shownPicture({ ...panel, sensorWidthMm: 16 / 9 }).shownHeightMm).toBeCloseTo(16 / 9 / 2.39, 9);
  expect(shown.shownWidthMm).toBeCloseTo(110.69, 2);
});

property.prop([fc.double({ min: 0.5, max: 5, noNaN: true }), fc.double({ min: 1, max: 2,
  noNaN: true })])('the shown picture fills one side of the panel and keeps its shape', (aspect, squeeze) => {
  const given = { diagonalMm: 177.8, panelWidthPx: 1920, panelHeightPx: 1200, sensorWidthMm: aspect, sensorHeightMm: 1, squeeze };
  const { shownWidthMm, shownHeightMm, panelPixelMm } = shownPicture(given);
  expect(shownWidthMm / shownHeightMm).toBeCloseTo(aspect * squeeze, 9);
  expect(Math.max(shownWidthMm / (1920 * panelPixelMm), shownHeightMm / (1200 * panelPixelMm))).toBeCloseTo(1, 9);
});
