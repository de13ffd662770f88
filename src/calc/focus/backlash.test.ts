import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { backlash } from './backlash.ts';

const involute = (angle: number) => Math.tan(angle) - angle;

property.prop([fc.integer({ min: 18, max: 60 }), fc.integer({ min: 60, max: 160 }), fc.double({ min: 0.001, max: 0.1, noNaN: true })])(
  'agrees with the exact play of involutes on opened centres to a twentieth',
  (driverTeeth, drivenTeeth, share) => {
    const [moduleMm, alpha] = [0.8, (20 * Math.PI) / 180];
    const centreMm = (moduleMm * (driverTeeth + drivenTeeth)) / 2;
    const centreErrorMm = share * moduleMm;
    // Exact: the working pressure angle has cos = a·cosα/a', and the play on the working circle is 2·a'·(inv α' − inv α).
    const working = Math.acos((centreMm * Math.cos(alpha)) / (centreMm + centreErrorMm));
    const exactMm = 2 * (centreMm + centreErrorMm) * (involute(working) - involute(alpha));
    const { backlashMm } = backlash({ centreErrorMm, pressureAngleDeg: 20, pitchDiameterMm: moduleMm * drivenTeeth });
    expect(backlashMm / exactMm).toBeGreaterThan(0.95);
    expect(backlashMm / exactMm).toBeLessThan(1.05);
  },
);

test('gears pressed in have less than none', () => {
  expect(backlash({ centreErrorMm: -0.05, pressureAngleDeg: 20, pitchDiameterMm: 96 }).backlashMm).toBeLessThan(0);
});

test('a gear without size is refused', () => {
  const answer = backlash.answer({ centreErrorMm: 0.1, pressureAngleDeg: 20, pitchDiameterMm: 0 });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'pitchDiameterMm' }] });
});
