import { expect, test } from 'vitest';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import { type Transform, subtract } from '../placing/Transform.ts';
import { handMove } from './handMove.ts';

type Ends = 'as written' | 'the other way round';

/** The rig on a shoulder, its pad under the plate; placing starts from the body. */
const onShoulder = (slideMm: number, ends: Ends = 'as written', root = 'body') =>
  placeSetup(new Ledger(riggedShoot((draft) => {
    const { parts } = draft.kit;
    parts.plate.points.foot = { kind: 'wedge', class: 'long wedge', sex: 'male', at: [0, -44, 0], out: [0, -1, 0], up: [0, 0, 1] };
    parts.pad = {
      name: 'Pad', kind: 'shoulder pad', massG: 400, carrier: { kind: 'shoulder pad' },
      points: { top: { kind: 'wedge', class: 'long wedge', sex: 'female', at: [0, 0, 0], out: [0, 1, 0], up: [0, 0, 1] } },
    };
    const { camera } = draft.builds;
    Object.assign(camera, { purpose: 'shoulder', root });
    camera.pieces.pad = { of: 'pad' };
    camera.joints.pad = { a: 'pad/top', b: 'plate/foot' };
    const { a, b } = camera.joints['body-on-plate'];
    camera.joints['body-on-plate'] = { ...(ends === 'as written' ? { a, b } : { a: b, b: a }), settings: { slideMm } };
    delete camera.joints.mesh;
  })), 'sticks', 'normal');

test.each([['as written', 'body'], ['the other way round', 'body'], ['as written', 'plate'], ['the other way round', 'plate']] as const)(
  'on a shoulder the body moves on the plate that stands there, its joint written %s and placed from the %s',
  (ends, root) => {
    const [before, after] = [onShoulder(0, ends, root), onShoulder(12, ends, root)];
    const joint = before.model.tree.find((step) => step.joint.path.endsWith('body-on-plate'))?.joint;
    if (joint === undefined) throw new Error('The body stands on nothing.');
    const bodyFromPlate = ({ places }: typeof before) => subtract((places.get('camera/body') as Transform).t, (places.get('camera/plate') as Transform).t);
    const [, , ahead] = subtract(bodyFromPlate(after), bodyFromPlate(before));
    expect(Math.abs(ahead)).toBeCloseTo(12, 6);
    expect(handMove(before, { joint, key: 'slideMm' }, 12)).toMatchObject({ moves: { piece: { name: 'Body' } }, on: { piece: { name: 'Plate with rod seats' } }, way: ahead > 0 ? 'forward' : 'back' });
    expect(handMove(before, { joint, key: 'slideMm' }, -12).way).toBe(ahead > 0 ? 'back' : 'forward');
  },
);

test.each(['as written', 'the other way round'] as const)('a support is raised under its glass, and the glass stays, its joint written %s', (ends) => {
  const ledger = new Ledger(riggedShoot((draft) => {
    const { parts } = draft.kit;
    parts.support = {
      name: 'Support', kind: 'support', massG: 150,
      points: { rod: { kind: 'rod clamp', class: '15 mm', sex: 'female', at: [-30, 0, 0], out: [0, 0, -1], up: [0, 1, 0] }, top: { kind: 'surface', at: [0, 16, 0], out: [0, 1, 0], up: [0, 0, 1], heightMm: [0, 60] } },
    };
    parts['block-1-5'].points.under = { kind: 'surface', at: [0, -40, 20], out: [0, -1, 0], up: [0, 0, 1] };
    draft.builds.camera.pieces.support = { of: 'support' };
    draft.builds.camera.joints['support-on-rod'] = { a: 'rod-right/along', b: 'support/rod', settings: { slideMm: 80 } };
    const [a, b] = ends === 'as written' ? ['support/top', 'block/under'] : ['block/under', 'support/top'];
    draft.glasses.normal.joints.support = { a, b, settings: { heightMm: { auto: 'perLens' } } };
  }));
  const placement = placeSetup(ledger, 'sticks', 'normal');
  const joint = placement.model.loops.find((loop) => loop.joint.path.endsWith('support'))?.joint;
  if (joint === undefined) throw new Error('Nothing is supported.');
  expect(handMove(placement, { joint, key: 'heightMm' }, 3)).toMatchObject({ moves: { piece: { name: 'Support' } }, on: { piece: { name: '1.5× block' } }, way: 'up' });
});
