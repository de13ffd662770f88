import { describe, expect, test } from 'vitest';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { rigJoints } from '../../assembly/placing/rigJoints.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { fixedWords, howWords } from './jointWords.ts';
import { movedPiece, settingPlace, settingShift } from './settingPlace.ts';

describe('a clamp on a rod of 300 mm that is held at its back end', () => {
  const ledger = new Ledger(riggedShoot());
  const of = (glass: string) => ({ ledger, setup: 'sticks', glass, system: 'metric' as const });
  const slide = (glass: string) => {
    const found = placeSetup(ledger, 'sticks', glass).settings.find(({ joint, key }) => joint.a.piece.name.startsWith('15 mm rod') && key === 'slideMm');
    if (found === undefined) throw new Error('no slide');
    return found;
  };
  const said = (text: string) => Number(/([\d.]+)/.exec(text.replace(/^clamp /, ''))?.[1]);

  // Geometry: along a rod counted from its back end, so much is left to its front end.
  test.each(['normal', 'long'])('is told from the front end, with %s', (glass) => {
    expect(settingPlace(of(glass), slide(glass))).toMatch(/^clamp [\d.]+.mm behind the rod’s front end$/);
    expect(said(settingPlace(of(glass), slide(glass)))).toBeCloseTo(300 - slide(glass).value, -0.5);
  });

  test('and how far it is from where it was with the first glass', () => {
    const by = slide('long').value - slide('normal').value;
    const says = settingShift(of('long'), slide('long'), { glass: 'normal', name: 'the short one' });
    expect(says).toMatch(by > 0 ? /^[\d.]+.mm further forward than with the short one$/ : /^[\d.]+.mm further back than with the short one$/);
    expect(said(says ?? '')).toBeCloseTo(Math.abs(by), 0);
    expect(settingShift(of('normal'), slide('normal'), { glass: 'normal', name: 'itself' })).toBeUndefined();
  });
});

test('no joint is told with an empty point, and a mount by its class', () => {
  const ledger = new Ledger(riggedShoot((draft) => {
    const { body, 'taking-58': lens } = draft.kit.parts;
    for (const { joints } of Object.values<{ joints: Record<string, unknown> }>(draft.glasses)) delete joints['lens-mount'];
    for (const part of [body, lens]) for (const [id, point] of Object.entries<{ kind: string }>(part.points ?? {})) if (point.kind === 'lens mount') delete part.points[id];
  }));
  const { joints } = rigJoints(ledger, 'sticks', 'normal');
  const all = joints.filter(({ mesh }) => !mesh).map((joint) => ({ says: fixedWords(joint.b, joint.a), how: howWords(joint).join(', '), joint }));
  for (const { says, how } of all) expect(`${says}; ${how}`).not.toMatch(/, ,|,\s*$|\(\)|undefined|^front$/);
  const mount = all.find(({ joint }) => joint.implied && joint.a.piece.part.has('body'));
  expect(mount?.how).toBe(`${ledger.at('kit/parts/body/body/mount') as string} mount`);
});

test('of a body that slides on what stands on the shoulder it is the body that is moved, and told of; on the build sheet what is put on', () => {
  const ledger = new Ledger(riggedShoot((draft) => {
    const { camera } = draft.builds;
    Object.assign(camera, { root: 'body', purpose: 'shoulder' });
    draft.kit.parts.plate.carrier = { kind: 'shoulder pad' };
    // A setting is counted from the plate: of the body on it. Its screw holes face up, lengthwise is forward.
    camera.joints['body-on-plate'].settings = { slideMm: 15 };
  }));
  const placement = placeSetup(ledger, 'sticks', 'normal');
  const joint = placement.model.tree.find((step) => step.joint.path.endsWith('body-on-plate'))?.joint;
  if (joint === undefined) throw new Error('no joint');
  const [of, stands] = [{ ledger, setup: 'sticks', glass: 'normal', system: 'metric' as const }, { joint, key: 'slideMm' as const, value: 15 }];
  expect(movedPiece(placement, stands)).toBe('Body');
  expect(settingPlace(of, stands)).toMatch(/^15.mm forward from its middle$/);
  expect(settingPlace(of, stands, 'camera/plate')).toMatch(/^15.mm back from its middle$/);
});
