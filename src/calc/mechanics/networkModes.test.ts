import { expect, test } from 'vitest';
import { networkModes } from './networkModes.ts';

function modesOf(input: unknown) {
  const answer = networkModes.answer(input);
  if (!answer.ok) throw new Error(JSON.stringify(answer.faults));
  return answer.value.modes;
}
const ground = { name: 'ground', centreMm: [0, 0, 0], fixed: true };

test('one mass on one spring: √(k/m)/2π along each of its ways, and that way holds all of it', () => {
  const modes = modesOf(networkModes.contract.examples[0].given);
  expect(modes[0]!.frequencyHz).toBeCloseTo(5.0329, 4);
  expect(modes.slice(0, 3).map((mode) => mode.rulingWay)).toEqual(['xNPerMm', 'yNPerMm', 'zNPerMm']);
  expect(modes.slice(0, 3).map((mode) => mode.springShares[0]!.toFixed(9))).toEqual(['1.000000000', '1.000000000', '1.000000000']);
  // Kinetic energy of one kilogram: 1 kg moves by 1 m.
  expect(Math.abs(modes[0]!.shape[1]!.shiftMm[0]!)).toBeCloseTo(1000, 6);
});

const joint = (a: string, b: string, z: number, nodding: number) =>
  ({ a, b, atMm: [0, 0, z], stiffness: { xNPerMm: 5000, yNPerMm: 5000, zNPerMm: 5000, xNmPerRad: nodding, yNmPerRad: 4000, zNmPerRad: 4000 } });
const arm = (softer: number) => ({
  bodies: [
    ground,
    { name: 'lower arm', massG: 200, centreMm: [0, 0, 60], inertiaKgM2: [3e-4, 3e-4, 1e-4] },
    { name: 'upper arm', massG: 200, centreMm: [0, 0, 180], inertiaKgM2: [3e-4, 3e-4, 1e-4] },
    { name: 'monitor', massG: 900, centreMm: [0, 30, 260], inertiaKgM2: [2e-3, 3e-3, 2e-3] },
  ],
  springs: [joint('ground', 'lower arm', 0, 300), joint('lower arm', 'upper arm', 120, 60 * softer), joint('upper arm', 'monitor', 240, 300)],
});

test('the soft elbow rules the arm, by its nodding', () => {
  const [lowest] = modesOf(arm(1));
  expect(lowest).toMatchObject({ rulingSpring: 1, rulingWay: 'xNmPerRad' });
});

test('a joint stiffer by a hundredth raises the frequency by half its share of a hundredth (Rayleigh)', () => {
  const [before, after] = [modesOf(arm(1 - 1e-4))[0]!, modesOf(arm(1 + 1e-4))[0]!];
  const rise = Math.log(after.frequencyHz / before.frequencyHz) / Math.log((1 + 1e-4) / (1 - 1e-4));
  const [mode] = modesOf(arm(1));
  // Only the nodding was changed; the elbow's other ways hold the rest of its share.
  expect(rise).toBeLessThanOrEqual(mode!.springShares[1]! / 2 + 1e-6);
  expect(rise).toBeGreaterThan(mode!.springShares[1]! / 2 - 0.01);
  expect(mode!.springShares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
});

test('a bar holds all of the energy where it is the only thing that bends', () => {
  const [mode] = modesOf({
    bodies: [ground, { name: 'end', massG: 1000, centreMm: [0, 0, 200], inertiaKgM2: [0, 0, 0] }],
    beams: [{ a: 'ground', b: 'end', fromMm: [0, 0, 0], toMm: [0, 0, 200], youngGPa: 71, shearGPa: 26.2, outerMm: 15, innerMm: 12 }],
  });
  expect(mode).toMatchObject({ rulingSpring: -1, rulingWay: '' });
  expect(mode!.beamShares[0]).toBeCloseTo(1, 12);
});
