import type { NetworkLoad } from '../../calc/mechanics/network/model.ts';
import { weightN } from '../../calc/mechanics/gravity.ts';
import { type Vector, scale } from '../placing/Transform.ts';
import type { RigNetwork } from './rigNetwork.ts';

/** Ways a camera is held, as the direction in which its weight pulls, in the frame of the build. */
export const ATTITUDES = {
  upright: [0, -1, 0], 'on its left side': [1, 0, 0], 'on its right side': [-1, 0, 0], 'looking down': [0, 0, 1], 'looking up': [0, 0, -1],
} as const satisfies Readonly<Record<string, Vector>>;
export type Attitude = keyof typeof ATTITUDES;

/** The weight of every body of a rig, N, pulling one way in the frame of the build. */
export function weightLoads({ model }: Pick<RigNetwork, 'model'>, way: Vector): NetworkLoad[] {
  return model.bodies.flatMap(({ name, massG = 0, fixed }) => (fixed === true || massG === 0 ? [] : [{ body: name, forceN: scale(way, weightN(massG)) }]));
}
