import { expect, test } from 'vitest';
import { roundSection } from '../roundSection.ts';
import type { Tensor } from '../vector.ts';
import { FloatingNetwork } from './FloatingNetwork.ts';

const round = (size: number): Tensor => [[size, 0, 0], [0, size, 0], [0, 0, size]];
const stiffness = { xNPerMm: 4, yNPerMm: 900, zNPerMm: 900, xNmPerRad: 900, yNmPerRad: 900, zNmPerRad: 900 };
const pair = {
  bodies: [
    { name: 'body', massG: 3000, centreMm: [0, 0, 0] as const, inertiaKgM2: round(0.02) },
    { name: 'lens', massG: 1000, centreMm: [0, 0, 0] as const, inertiaKgM2: round(0.01) },
  ],
  springs: [{ a: 'body', b: 'lens', atMm: [0, 0, 0] as const, stiffness }],
};

test('two masses on a spring in the air: √(k(1/m + 1/M))/2π (textbook)', () => {
  const [mode] = new FloatingNetwork(pair).modes(2);
  expect(mode!.frequencyHz).toBeCloseTo(Math.sqrt(4000 * (1 + 1 / 3)) / (2 * Math.PI), 8);
  expect(mode!.springShares[0]![0]).toBeCloseTo(1, 9);
});

test('pulled by one, the spring carries what the other\'s mass takes: F·m/(m + M) (Newton)', () => {
  const { motion, springs, reaction } = new FloatingNetwork(pair).solve([{ body: 'body', forceN: [8, 0, 0] }]);
  expect(springs()[0]!.onB.forceN[0]).toBeCloseTo(2, 9);
  expect(motion.relative({ of: 'lens', to: 'body', atMm: [0, 0, 0] }).shiftMm[0]).toBeCloseTo(-0.5, 9);
  reaction([0, 0, 0]).forceN.forEach((value) => expect(value).toBeCloseTo(0, 9));
});

test('a moment is borne by inertia in the same way', () => {
  const { springs } = new FloatingNetwork(pair).solve([{ body: 'lens', momentNm: [0, 0.3, 0] }]);
  expect(springs()[0]!.onB.momentNm[1]).toBeCloseTo(-0.3 * (0.02 / 0.03), 9);
});

test('a bar in the air swings at βL = 4.73004 and 7.85320 (Blevins, free ends)', () => {
  const [pieces, lengthMm, barG] = [60, 600, 300];
  const { bendingMm4, areaMm2, twistMm4 } = roundSection(10, 0);
  const at = (k: number) => [0, 0, (lengthMm * k) / pieces] as const;
  const names = Array.from({ length: pieces + 1 }, (_, k) => `p${k}`);
  const floating = new FloatingNetwork({
    bodies: names.map((name, k) => ({ name, massG: (barG / pieces) * (k === 0 || k === pieces ? 0.5 : 1), centreMm: at(k), inertiaKgM2: round(1e-9) })),
    beams: names.slice(1).map((b, k) => (
      { a: names[k]!, b, fromMm: at(k), toMm: at(k + 1), youngGPa: 207, shearGPa: 79.3, areaMm2, iyMm4: bendingMm4, izMm4: bendingMm4, jMm4: twistMm4 }
    )),
  });
  const unit = Math.sqrt((207e9 * bendingMm4 * 1e-12) / (0.3 * 0.6 ** 3)) / (2 * Math.PI);
  const found = floating.modes(4).map(({ frequencyHz }) => Math.sqrt(frequencyHz / unit));
  // Lumped in 60 pieces: the ends a little too heavy.
  [4.730_04, 4.730_04, 7.853_2, 7.853_2].forEach((published, k) => expect(Math.abs(found[k]! / published - 1)).toBeLessThan(2e-3));
});

test('what hangs loose is named, and nothing may be fixed', () => {
  const loose = { name: 'strap', massG: 50, centreMm: [0, 0, 9] as const, inertiaKgM2: round(1e-5) };
  expect(new FloatingNetwork({ ...pair, bodies: [...pair.bodies, loose] }).freeMotions[0]!.bodies).toEqual(['strap']);
  expect(() => new FloatingNetwork({ ...pair, bodies: [{ ...loose, fixed: true }, ...pair.bodies] })).toThrow('cannot have a fixed body');
});
