import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { circleFromViewing } from './circleFromViewing.ts';
import { circleOfConfusion } from './circleOfConfusion.ts';

property.prop([fc.double({ min: 3, max: 60, noNaN: true }), fc.integer({ min: 480, max: 4320 })])(
  'where the eye just tells the lines apart, both ways of choosing give one line',
  (frameHeightMm, deliveryLines) => {
    // Adjacent pixels at 1 arcmin: 3438/lines picture heights (the 3.18 of 1080 lines).
    const viewingHeights = 3437.75 / deliveryLines;
    const seen = circleFromViewing({ frameHeightMm, viewingHeights, acuityArcmin: 1 }).circleOfConfusionMm;
    expect(seen / circleOfConfusion({ frameHeightMm, deliveryLines, linesPerBlur: 1 }).circleOfConfusionMm).toBeCloseTo(1, 4);
  },
);

test('a crop asks for a smaller one in proportion', () => {
  const whole = circleOfConfusion({ frameHeightMm: 24, deliveryLines: 2160, linesPerBlur: 2 }).circleOfConfusionMm;
  expect(circleOfConfusion({ frameHeightMm: 12, deliveryLines: 2160, linesPerBlur: 2 }).circleOfConfusionMm).toBeCloseTo(whole / 2, 12);
});

test('a picture without lines is refused', () => {
  const delivered = circleOfConfusion.answer({ frameHeightMm: 24, deliveryLines: 0, linesPerBlur: 2 });
  const viewed = circleFromViewing.answer({ frameHeightMm: 24, viewingHeights: 3, acuityArcmin: null });
  expect(delivered).toMatchObject({ ok: false, faults: [{ path: 'deliveryLines' }] });
  expect(viewed).toMatchObject({ ok: false, faults: [{ path: 'acuityArcmin' }] });
});
