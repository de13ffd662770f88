import { NO_INERTIA, composite } from '../../calc/mechanics/massProperties.ts';
import type { Motion } from '../../calc/mechanics/network/Motion.ts';
import { solveTensor } from '../../calc/mechanics/solveTensor.ts';
import type { RigNetwork } from './rigNetwork.ts';
import { type Vector, add, cross, scale, subtract } from '../placing/Transform.ts';

/**
 * The turn of a rig as a whole in a motion, deg: the one that leaves it without angular momentum, as bodies that push only each other have none. A rig
 * on a shoulder or in the hands turns so against the ground, which is too soft to hold it in the time a push takes.
 */
export function meanTurn({ model }: Pick<RigNetwork, 'model'>, motion: Motion): Vector {
  const bodies = model.bodies.map(({ name, massG = 0, centreMm, inertiaKgM2 = NO_INERTIA }) => ({ name, massG, centreMm, inertiaKgM2 }));
  const whole = composite(bodies);
  const mean = scale(bodies.reduce<Vector>((sum, { name, massG, centreMm }) => add(sum, scale(motion.shiftAt(name, centreMm), massG)), [0, 0, 0]), 1 / whole.massG);
  const momentum = bodies.reduce<Vector>((sum, { name, massG, centreMm, inertiaKgM2 }) => {
    const turn = scale(motion.turnDegOf(name), Math.PI / 180);
    const orbit = scale(cross(subtract(centreMm, whole.centreMm as Vector), subtract(motion.shiftAt(name, centreMm), mean)), massG * 1e-9);
    const own = inertiaKgM2.map((row) => row[0] * turn[0] + row[1] * turn[1] + row[2] * turn[2]) as unknown as Vector;
    return add(sum, add(orbit, own));
  }, [0, 0, 0]);
  const turn = solveTensor(whole.inertiaKgM2, momentum);
  return turn === undefined ? [0, 0, 0] : scale(turn, 180 / Math.PI);
}
