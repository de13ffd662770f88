import type { Shoot } from '../src/shoot/schema/shoot.ts';
import { riggedShoot } from './riggedShoot.ts';
import type { Draft } from './tinyShoot.ts';

/** The rigged shoot on a head, with nothing that weighs to speak of but the body: 2 kg, its middle 104 mm above the head's plate and 17 mm behind it. */
export function headShoot(change: (draft: Draft) => void = () => undefined): Shoot {
  return riggedShoot((draft) => {
    for (const part of Object.values<Draft>(draft.kit.parts)) part.massG = 1e-15;
    draft.kit.parts.body.massG = 2000;
    draft.kit.parts.plate.points.bottom = { kind: 'tripod plate', class: 'head plate', sex: 'male', at: [0, -44, 0], out: [0, -1, 0], up: [0, 0, 1] };
    draft.kit.parts.head = {
      name: 'Head', kind: 'head', massG: 3000, carrier: { kind: 'head', payloadG: 9000, counterbalanceNm: 4, plateTravelMm: 90 },
      points: { plate: { kind: 'tripod plate', class: 'head plate', sex: 'female', at: [0, 0, 0], out: [0, 1, 0], up: [0, 0, 1] } },
      solids: [{ shape: 'box', sizeMm: [110, 150, 150], atMm: [0, -95, 0] }],
    };
    draft.builds.camera.pieces.head = { of: 'head' };
    draft.builds.camera.joints.head = { a: 'plate/bottom', b: 'head/plate' };
    change(draft);
  });
}
