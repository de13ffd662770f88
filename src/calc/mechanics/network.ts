import { calculator } from '../calculator.ts';
import { heldNetwork, networkInputs } from './network/given.ts';
import type { BodyMotion } from './network/Motion.ts';

export interface NetworkResult {
  bodies: BodyMotion[];
  frequenciesHz: number[];
}

const MODES = 6;

/**
 * One load case. What joints carry is in `networkForces`, shapes and ruling joints in `networkModes`; in code,
 * `network/Network.ts` has all of it with one factoring.
 */
export const network = calculator(
  {
    name: 'mechanics.network',
    sentence: 'How rigid bodies on springs and beams move under load, and their lowest frequencies.',
    inputs: networkInputs,
    results: {
      bodies: 'list in the order given: {name, shiftMm of its centre, turnDeg as a small rotation vector}; zeros where fixed',
      frequenciesHz: 'Hz, the six lowest frequencies, ascending; fewer where fewer directions carry mass',
    },
    formula:
      'K·q = f with K the sum over springs and beams of Tᵀ·k·T, T the rigid motion of the ends; Euler–Bernoulli beams, Saint-Venant twist;  ' +
      'ω² from K·v = ω²·M·v, directions without mass condensed. Small displacements; supports are bonded: they pull as well as push',
    source: 'Matrix structural analysis as in Przemieniecki (1968) and Logan, A First Course in the Finite Element Method',
    examples: [
      {
        given: {
          bodies: [
            { name: 'wall', massG: 0, centreMm: [0, 0, 0], fixed: true },
            { name: 'bar end', massG: 1000, centreMm: [0, 0, 200], inertiaKgM2: [[0, 0, 0], [0, 0, 0], [0, 0, 0]] },
          ],
          springs: [],
          beams: [{ a: 'wall', b: 'bar end', fromMm: [0, 0, 0], toMm: [0, 0, 200], youngGPa: 207, shearGPa: 79.3, outerMm: 15, innerMm: 12 }],
          loads: [{ body: 'bar end', forceN: [0, -20, 0], momentNm: [0, 0, 0], atMm: [0, 0, 200] }],
        },
        gives: {},
        source: 'cantilever 15 × 12 mm, 20 N at 200 mm: 0.17561 mm and 1.3171 mrad; held in network.test.ts',
      },
    ],
  },
  (given): NetworkResult => {
    const network = heldNetwork(given);
    return { bodies: network.solve(given.loads).motion.bodies(), frequenciesHz: network.modes(MODES).map((mode) => mode.frequencyHz) };
  },
);
