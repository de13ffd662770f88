import { calculator } from '../calculator.ts';
import { heldNetwork, networkInputs } from './network/given.ts';
import { STIFFNESS_KEYS } from './network/model.ts';
import type { BodyMotion } from './network/Motion.ts';

export interface NetworkModes {
  modes: {
    frequencyHz: number;
    springShares: number[];
    beamShares: number[];
    rulingSpring: number;
    rulingWay: string;
    shape: BodyMotion[];
  }[];
}

const MODES = 6;

/** Which joint a wobble hangs on. `mechanics.network` gives the frequencies alone. */
export const networkModes = calculator(
  {
    name: 'mechanics.networkModes',
    sentence: 'The lowest ways rigid bodies on springs and beams swing, how each looks, and which joint it hangs on.',
    inputs: networkInputs,
    results: {
      modes:
        'list of up to six, by rising frequencyHz: {frequencyHz, springShares and beamShares of the strain energy in the order given, ' +
        'rulingSpring: place of the spring that holds most (−1: no springs), rulingWay: its stiffness that holds most, ' +
        'shape: as `bodies` of mechanics.network, scaled to a kinetic energy of 1 kg; only its shape has meaning}',
    },
    formula:
      'K·v = ω²·M·v;  share of a joint = vᵀ·k·v/vᵀ·K·v = d ln(ω²)/d ln(k): a joint stiffer by 1 % raises the frequency by half its share of 1 %',
    source: 'Rayleigh quotient, as in any text on vibration; elements as in mechanics.network',
    examples: [
      {
        given: {
          bodies: [
            { name: 'ground', centreMm: [0, 0, 0], fixed: true },
            { name: 'body', massG: 1000, centreMm: [0, 0, 0], inertiaKgM2: [0.001, 0.001, 0.001] },
          ],
          springs: [
            {
              a: 'ground', b: 'body', atMm: [0, 0, 0],
              stiffness: { xNPerMm: 1, yNPerMm: 2, zNPerMm: 3, xNmPerRad: 100, yNmPerRad: 100, zNmPerRad: 100 },
            },
          ],
        },
        gives: {},
        source: 'one mass on one spring: √(k/m)/2π = 5.0329 Hz along x, all of it in xNPerMm; held in networkModes.test.ts',
      },
    ],
  },
  (given): NetworkModes => ({
    modes: heldNetwork(given).modes(MODES).map(({ frequencyHz, shape, springShares, beamShares }) => {
      const wholes = springShares.map((ways) => ways.reduce((sum, one) => sum + one, 0));
      const rulingSpring = wholes.reduce((best, one, i) => (one > (wholes[best] ?? -1) ? i : best), -1);
      const ways = springShares[rulingSpring];
      const rulingWay = ways === undefined ? '' : STIFFNESS_KEYS[ways.indexOf(Math.max(...ways))]!;
      return { frequencyHz, springShares: wholes, beamShares: [...beamShares], rulingSpring, rulingWay, shape: shape.bodies() };
    }),
  }),
);
