import { expect, test } from 'vitest';
import { networkForces } from './networkForces.ts';

function forcesOf(input: unknown) {
  const answer = networkForces.answer(input);
  if (!answer.ok) throw new Error(JSON.stringify(answer.faults));
  return answer.value;
}
const firm = { xNPerMm: 100, yNPerMm: 100, zNPerMm: 100, xNmPerRad: 500, yNmPerRad: 500, zNmPerRad: 500 };
const RIGID = { xNPerMm: null, yNPerMm: null, zNPerMm: null, xNmPerRad: null, yNmPerRad: null, zNmPerRad: null };
const piece = (name: string, z: number) => ({ name, massG: 0, centreMm: [0, 0, z], inertiaKgM2: [0, 0, 0] });
const wall = { name: 'wall', centreMm: [0, 0, 0], fixed: true };
const close = (actual: readonly number[], expected: readonly number[]) => actual.forEach((value, i) => expect(value).toBeCloseTo(expected[i]!, 9));

test('20 N at the end of a 300 mm arm: the joint holds it up by 20 N and 6 N·m, and so does the ground', () => {
  const { springs, reaction } = forcesOf(networkForces.contract.examples[0].given);
  close(springs[0]!.forceN, [0, 20, 0]);
  close(springs[0]!.momentNm, [-6, 0, 0]);
  close(reaction.forceN, [0, 20, 0]);
  close(reaction.momentNm, [-6, 0, 0]);
});

test('in its own axes: a joint turned by a right angle about z calls up its x', () => {
  const { springs } = forcesOf({
    bodies: [wall, piece('arm', 300)],
    springs: [{ a: 'wall', b: 'arm', atMm: [0, 0, 0], axes: [[0, 1, 0], [-1, 0, 0], [0, 0, 1]], stiffness: firm }],
    loads: [{ body: 'arm', forceN: [0, -20, 0] }],
  });
  close(springs[0]!.forceN, [20, 0, 0]);
  close(springs[0]!.momentNm, [0, 6, 0]);
});

test('a built-in bar: wall moment W·l, tip none; a tip load twists nothing', () => {
  const { beams } = forcesOf({
    bodies: [wall, piece('end', 200)],
    beams: [
      { a: 'wall', b: 'end', fromMm: [0, 0, 0], toMm: [0, 0, 200], youngGPa: 207, shearGPa: 79.3, outerMm: 15, innerMm: 12, localY: [0, 1, 0] },
    ],
    loads: [{ body: 'end', forceN: [0, -20, 0] }],
  });
  // Local x is +z, local y is +y, local z is +z × +y = −x: the wall's moment of 4 N·m is about local z.
  close(beams[0]!.forceN, [0, 20, 0]);
  close(beams[0]!.momentNm, [0, 0, 0]);
  close(beams[0]!.farForceN, [0, -20, 0]);
  expect(Math.abs(beams[0]!.farMomentNm[2])).toBeCloseTo(4, 9);
});

test('rigid joints one behind the other carry what hangs behind them', () => {
  const { springs } = forcesOf({
    bodies: [wall, piece('near', 100), piece('far', 200)],
    springs: [{ a: 'wall', b: 'near', atMm: [0, 0, 50], stiffness: RIGID }, { a: 'far', b: 'near', atMm: [0, 0, 150], stiffness: RIGID }],
    loads: [{ body: 'far', forceN: [0, -10, 0] }, { body: 'near', forceN: [0, -5, 0] }],
  });
  close(springs[0]!.forceN, [0, 15, 0]);
  close(springs[0]!.momentNm, [-(10 * 0.15 + 5 * 0.05), 0, 0]);
  // On b, which here is the near one: what the far one puts on it.
  close(springs[1]!.forceN, [0, -10, 0]);
  close(springs[1]!.momentNm, [0.5, 0, 0]);
});

test('two rigid joints side by side: how they share cannot be told, and is not made up', () => {
  const answer = forcesOf({
    bodies: [wall, piece('plate', 100)],
    springs: [{ a: 'wall', b: 'plate', atMm: [0, 0, 50], stiffness: RIGID }, { a: 'wall', b: 'plate', atMm: [20, 0, 50], stiffness: RIGID }],
    loads: [{ body: 'plate', forceN: [0, -10, 0] }],
  });
  expect(answer.springs[0]!.forceN).toEqual([Infinity, Infinity, Infinity]);
  close(answer.reaction.forceN, [0, 10, 0]);
});
