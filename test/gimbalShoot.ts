import type { Shoot } from '../src/shoot/schema/shoot.ts';
import { headShoot } from './headShoot.ts';
import type { Draft } from './tinyShoot.ts';

/** The head shoot in a gimbal whose axes meet 100 mm above its plate: 2 kg, their centre 4 mm above the axes and 17 mm behind them. The plate slides fore and aft and up and down. */
export function gimbalShoot(change: (draft: Draft) => void = () => undefined): Shoot {
  return headShoot((draft) => {
    draft.builds.camera.purpose = 'gimbal';
    draft.kit.parts.head = {
      name: 'Gimbal', kind: 'gimbal', massG: 3000, carrier: { kind: 'gimbal', payloadG: 7000, motorNm: 0.5, axesAtMm: [0, 100, 0] },
      points: { plate: { kind: 'tripod plate', class: 'head plate', sex: 'female', at: [0, 0, 0], out: [0, 1, 0], up: [0, 0, 1], slideMm: [-40, 40], heightMm: [-10, 10] } },
    };
    // The camera does not move on its own plate.
    delete draft.kit.parts.plate.points.top.slideMm;
    change(draft);
  });
}
