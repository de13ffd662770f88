import * as z from 'zod';
import { NoAnswer, calculator } from '../calculator.ts';
import { inputs, nonNegative } from '../inputs.ts';
import { boxInertia, composite } from './massProperties.ts';
import { inSpace, sizesInSpace } from './places.ts';
import type { Tensor, Vector } from './vector.ts';

export interface Balance {
  massG: number;
  centreMm: Vector;
  inertiaKgM2: Tensor;
}

/** Mass, centre and inertia of a rig taken as boxes. Other shapes, turned any way, add up by `massProperties.ts`. */
export const balance = calculator(
  {
    name: 'mechanics.balance',
    sentence: 'Mass, centre of mass and inertia of several solid boxes taken as one body.',
    inputs: inputs({
      bodies: z
        .array(z.strictObject(
          { massG: nonNegative('g', 'mass'), centreMm: inSpace('mm', 'its centre'), boxMm: sizesInSpace('mm', 'its sizes along x, y and z') },
        ))
        .meta({ unit: '', description: 'solid boxes, their edges along the common axes' }),
    }),
    results: {
      massG: 'g, of all together',
      centreMm: 'mm, common centre of mass [x, y, z]',
      inertiaKgM2: 'kg·m², tensor about the common centre, three rows, products of inertia negative',
    },
    formula: 'c = Σ m·c/Σ m;  J = Σ (J_box + m·(d²·1 − d⊗d)), d from the common centre;  J_box,x = m(y² + z²)/12 and so on',
    source: 'Mechanics of rigid bodies (Steiner, parallel axes)',
    examples: [
      {
        given: {
          bodies: [
            { massG: 2500, centreMm: [0, 0, 70], boxMm: [150, 120, 140] },
            { massG: 3000, centreMm: [200, 0, 90], boxMm: [250, 110, 110] },
            { massG: 600, centreMm: [-20, 50, 250], boxMm: [30, 200, 130] },
          ],
        },
        gives: { massG: '6100' },
        source: 'derived; centre (96.393, 4.918, 97.541) mm and inertia 0.033344, 0.107885, 0.093296 kg·m² are held in balance.test.ts',
      },
    ],
  },
  ({ bodies }): Balance => {
    const whole = composite(bodies.map(({ massG, centreMm, boxMm }) => ({ massG, centreMm, inertiaKgM2: boxInertia(massG, boxMm) })));
    if (!(whole.massG > 0)) throw new NoAnswer('bodies', 'There is no mass in these bodies. Give at least one a mass of more than 0 g.');
    return whole;
  },
);
