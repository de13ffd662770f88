import { expect, test } from 'vitest';
import { Network } from '../../calc/mechanics/network/Network.ts';
import type { NetworkModel, Stiffness } from '../../calc/mechanics/network/model.ts';
import { meanTurn } from './meanTurn.ts';

const SOFT: Stiffness = { xNPerMm: 1e6, yNPerMm: 1e6, zNPerMm: 1e6, xNmPerRad: 10, yNmPerRad: 10, zNmPerRad: 10 };
const round = (kgM2: number) => [[kgM2, 0, 0], [0, kgM2, 0], [0, 0, kgM2]] as const;

/** Two bodies in one place, the first held; a joint between them turns by 10 N·m/rad. */
const pair = (first: number, second: number): NetworkModel => ({
  bodies: [{ name: 'a', massG: 1000, centreMm: [0, 0, 0], inertiaKgM2: round(first), fixed: true }, { name: 'b', massG: 1000, centreMm: [0, 0, 0], inertiaKgM2: round(second) }],
  springs: [{ a: 'a', b: 'b', atMm: [0, 0, 0], stiffness: SOFT }],
});

test('two that push each other turn in the measure of the other’s inertia', () => {
  const model = pair(0.03, 0.01);
  const { motion } = new Network(model).solve([{ body: 'b', momentNm: [0, 0.2, 0] }]);
  // By hand: 0.2/10 rad between them; free of the ground the second turns 3/4 of it, the first 1/4 the other way.
  const between = (0.02 * 180) / Math.PI;
  const [, still] = meanTurn({ model }, motion);
  expect(motion.turnDegOf('b')[1]).toBeCloseTo(between, 9);
  expect(motion.turnDegOf('b')[1] - still).toBeCloseTo(0.75 * between, 9);
  expect(motion.turnDegOf('a')[1] - still).toBeCloseTo(-0.25 * between, 9);
});
