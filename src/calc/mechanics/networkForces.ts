import { calculator } from '../calculator.ts';
import type { Carried, Wrench } from './network/forces.ts';
import { heldNetwork, networkInputs } from './network/given.ts';
import { inSpace } from './places.ts';
import type { Vector } from './vector.ts';

interface AtJoint {
  readonly a: string;
  readonly b: string;
  readonly forceN: Vector;
  readonly momentNm: Vector;
}

export interface NetworkForces {
  springs: AtJoint[];
  beams: (AtJoint & { readonly farForceN: Vector; readonly farMomentNm: Vector })[];
  reaction: Wrench;
}

/**
 * What each joint carries: to be held against what it can hold by friction. Springs that are rigid in all six ways show
 * what hangs behind them, where that can be told.
 */
export const networkForces = calculator(
  {
    name: 'mechanics.networkForces',
    sentence: 'The force and moment in every joint and beam of a network under load, and what the ground must give.',
    inputs: networkInputs.extend(
      {
        aboutMm: inSpace('mm', 'place').default([0, 0, 0]).meta(
          { unit: 'mm', description: 'place about which the moment of the ground is stated; absent: the origin' },
        ),
      },
    ),
    results: {
      springs:
        'list in the order given: {a, b, forceN, momentNm} on b at the joint, in its own axes; ' +
        'null where rigid joints share the load in a way that cannot be told',
      beams:
        'list in the order given: {a, b, forceN, momentNm} on b at toMm and {farForceN, farMomentNm} on a at fromMm, ' +
        'in its local axes (x along the beam)',
      reaction: '{forceN, momentNm} of the ground on all fixed bodies together, about aboutMm, in the common axes',
    },
    formula: 'f = k·(motion of the ends), elements as in mechanics.network;  reaction = −Σ loads, as forces and as moments',
    source: 'Equilibrium; elements as in mechanics.network',
    examples: [
      {
        given: {
          bodies: [{ name: 'wall', centreMm: [0, 0, 0], fixed: true }, { name: 'arm', massG: 0, centreMm: [0, 0, 300], inertiaKgM2: [0, 0, 0] }],
          springs: [
            {
              a: 'wall', b: 'arm', atMm: [0, 0, 0],
              stiffness: { xNPerMm: 100, yNPerMm: 100, zNPerMm: 100, xNmPerRad: 500, yNmPerRad: 500, zNmPerRad: 500 },
            },
          ],
          loads: [{ body: 'arm', forceN: [0, -20, 0], atMm: [0, 0, 300] }],
        },
        gives: {},
        source: 'lever: 20 N at 300 mm is 6 N·m at the joint; held in networkForces.test.ts',
      },
    ],
  },
  (given): NetworkForces => {
    const { springs, beams, bonds, reaction } = heldNetwork(given).solve(given.loads);
    const rigid = bonds();
    const ends = ({ a, b }: { a: string; b: string }) => ({ a, b });
    return {
      springs: springs().map((carried, i) => ({ ...ends(given.springs[i]!), ...(carried === undefined ? (rigid.shift() ?? UNKNOWN) : carried.onB) })),
      beams: beams().map((carried: Carried, i) => ({
        ...ends(given.beams[i]!), ...carried.onB, farForceN: carried.onA.forceN, farMomentNm: carried.onA.momentNm,
      })),
      reaction: reaction(given.aboutMm),
    };
  },
);

/** Printed as null. */
const UNKNOWN: Wrench = { forceN: [Infinity, Infinity, Infinity], momentNm: [Infinity, Infinity, Infinity] };
