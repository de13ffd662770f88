import { type Draft, tinyShoot } from './tinyShoot.ts';
import type { Shoot } from '../src/shoot/schema/shoot.ts';

/**
 * The tiny shoot on a plate with two rods, its focus driven by a motor on the left rod: the clamp slides along the rod and the motor
 * swings about it, both found for each lens. A second, longer taking lens makes a set of two.
 */
export function riggedShoot(change: (draft: Draft) => void = () => undefined): Shoot {
  return tinyShoot((draft) => {
    const parts = draft.kit.parts;
    parts['taking-90'] = structuredClone(parts['taking-58']);
    Object.assign(parts['taking-90'], { name: '90 mm taking lens', lengthMm: 88 });
    parts['taking-90'].points.front.at = [0, 0, 88];
    parts['taking-90'].solids = [{ shape: 'cylinder', diameterMm: 64, lengthMm: 88, along: 'z', atMm: [0, 0, 44] }];
    parts.plate = {
      name: 'Plate with rod seats', kind: 'plate', massG: 700,
      points: {
        top: { kind: 'hole', class: '1/4-20', sex: 'male', at: [0, 0, 0], out: [0, 1, 0], up: [0, 0, 1], slideMm: [-60, 60] },
        left: { kind: 'rod clamp', class: '15 mm', sex: 'female', at: [30, -20, 60], out: [0, 0, 1], up: [0, 1, 0] },
        right: { kind: 'rod clamp', class: '15 mm', sex: 'female', at: [-30, -20, 60], out: [0, 0, 1], up: [0, 1, 0] },
      },
      solids: [{ shape: 'box', sizeMm: [90, 40, 120], atMm: [0, -22, 0] }],
    };
    parts.rod = {
      name: '15 mm rod, 300 mm', kind: 'rod', count: 2, massG: 95,
      points: {
        back: { kind: 'rod', class: '15 mm', sex: 'male', at: [0, 0, 0], out: [0, 0, -1], up: [0, 1, 0] },
        along: { kind: 'rod', class: '15 mm', sex: 'male', at: [0, 0, 0], out: [0, 0, 1], up: [0, 1, 0], slideMm: [0, 300] },
      },
      solids: [{ shape: 'cylinder', diameterMm: 15, lengthMm: 300, along: 'z', atMm: [0, 0, 150] }],
    };
    parts.motor = {
      name: 'Motor on a clamp', kind: 'motor', massG: 260,
      motor: { stallTorqueNm: 0.5, noLoadRpm: 170, gear: { module: 0.8, teeth: 40, faceMm: 14 } },
      points: {
        clamp: { kind: 'rod clamp', class: '15 mm', sex: 'female', at: [0, 0, 0], out: [0, 0, -1], up: [0, 1, 0] },
        gear: { kind: 'gear', class: '0.8 module', at: [0, 62, 6], out: [0, 0, 1], up: [0, 1, 0] },
      },
      solids: [{ shape: 'box', sizeMm: [40, 50, 60], atMm: [0, 55, -30] }],
    };
    const camera = draft.builds.camera;
    camera.root = 'plate';
    Object.assign(camera.pieces, { plate: { of: 'plate' }, 'rod-left': { of: 'rod' }, 'rod-right': { of: 'rod' }, motor: { of: 'motor', gearTeeth: 40 } });
    camera.joints = {
      'body-on-plate': { a: 'plate/top', b: 'body/base' },
      'rod-left': { a: 'plate/left', b: 'rod-left/back' },
      'rod-right': { a: 'plate/right', b: 'rod-right/back' },
      'motor-on-rod': { a: 'rod-left/along', b: 'motor/clamp', settings: { slideMm: { auto: 'perLens' }, turnDeg: { auto: 'perLens', low: -90, high: 90 } } },
      mesh: { a: 'focuser/gear', b: 'motor/gear', mesh: true },
    };
    draft.glasses.long = structuredClone(draft.glasses.normal);
    draft.glasses.long.name = '90 mm behind the block';
    draft.glasses.long.pieces.lens.of = 'taking-90';
    draft.setups.sticks.glasses = ['normal', 'long'];
    change(draft);
  });
}
