import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { sag } from './sag.ts';

const NODS = { xNPerMm: 10_000, yNPerMm: 10_000, zNPerMm: 15_000, xNmPerRad: 100, yNmPerRad: 100, zNmPerRad: 1000 };

/** A body with 500 g on its top, 100 mm out, on an arm of no mass whose foot gives by 100 N·m/rad. */
const withArm = (change: (draft: Draft) => void = () => undefined) =>
  tinyShoot((draft) => {
    draft.kit.parts.body.points.top = { kind: 'thread', class: '1/4-20', sex: 'female', at: [0, 60, -20], out: [0, 1, 0], up: [0, 0, 1], stiffness: NODS };
    draft.kit.parts.weight = {
      name: 'Weight on an arm', kind: 'other', massG: 500, centreMm: [100, 0, 0],
      points: { foot: { kind: 'hole', class: '1/4-20', sex: 'male', at: [0, 0, 0], out: [0, -1, 0], up: [0, 0, 1] } },
    };
    draft.builds.camera.pieces.weight = { of: 'weight' };
    draft.builds.camera.joints = { ...draft.builds.camera.joints, weight: { a: 'body/top', b: 'weight/foot' } };
    change(draft);
  });

test('weight times arm over the stiffness turns it by 4.90 mrad, and times the arm again drops it by 0.49 mm', () => {
  const answer = askOne(sag, withArm(), 'glass=normal');
  // Statics by hand: 0.5 × 9.80665 × 0.1 = 0.4903 N·m over 100 N·m/rad; the foot itself gives 4.9033/15000 mm as well.
  const turnDeg = (0.004_903_325 * 180) / Math.PI;
  expect(answer.needs?.amount).toMatchObject({ unit: 'deg', value: expect.closeTo(turnDeg, 6) as number });
  expect(answer.steps?.[0]).toMatchObject({ says: expect.stringContaining('comes from Weight on an arm') as string, amount: { value: expect.closeTo(turnDeg, 6) as number } });
  expect(answer.steps?.find(({ says }) => says.startsWith('furthest'))?.amount?.value).toBeCloseTo(0.490_332_5 + 4.903_325 / 15_000, 6);
});

test('a fifth of the stiffness, five times the turn; a second screw beside it nods as two screws do beside one', () => {
  const soft = withArm((draft) => (draft.kit.parts.body.points.top.stiffness = { ...NODS, xNmPerRad: 20, yNmPerRad: 20 }));
  const answer = askOne(sag, soft, 'glass=normal');
  expect(answer.verdict).toBe('fails');
  expect(answer.says).toBe('Weight on an arm turns out of line with the camera under the weight: its joint to Body gives most.');
  const [mend] = answer.mends ?? [];
  expect(mend?.says).toContain('Put a second screw between Weight on an arm');
  // 2500 N·m/rad for two screws, 900 for one (standards/jointTypes); 1° is allowed, 1.405° by hand above.
  expect(mend?.use).toBeCloseTo((((0.004_903_325 * 5 * 180) / Math.PI) * 900) / 2500, 6);
  expect(answer.notes).toContain('Estimate, not a load rating.');
});

test('what a second screw does is what the file gives once it says two; with pins or without', () => {
  for (const pins of [false, true]) {
    const screws = (count: number) => withArm((draft) => {
      delete draft.kit.parts.body.points.top.stiffness;
      Object.assign(draft.kit.parts.body.points.top, { pins });
      Object.assign(draft.kit.parts.weight.points.foot, { pins, screws: count });
      Object.assign(draft.kit.parts.weight, { massG: 20_000, centreMm: [150, 0, 0] });
    });
    const [mend] = askOne(sag, screws(1), 'glass=normal').mends ?? [];
    expect(mend?.use).toBeCloseTo(askOne(sag, screws(2), 'glass=normal').use ?? Number.NaN, 9);
    expect(askOne(sag, screws(2), 'glass=normal').mends ?? []).toEqual([]);
  }
});

test('a second screw at the foot of an arm would leave its elbow soft: a second arm is what helps', () => {
  const answer = askOne(sag, withArm((draft) => {
    delete draft.kit.parts.body.points.top.stiffness;
    draft.kit.parts.weight.kind = 'arm';
    draft.kit.parts.weight.massG = 3000;
  }), 'glass=normal');
  expect(answer.mends?.map(({ says }) => says)).toEqual(['Put a second arm beside Weight on an arm']);
  // Two alike share the load; the body itself gives nothing here.
  expect(answer.mends?.[0]?.use).toBeCloseTo((answer.use ?? 0) / 2, 6);
});

test('a piece that nothing holds is named, and nothing is reckoned', () => {
  const loose = withArm((draft) => {
    draft.kit.parts.shelf = { name: 'Shelf on a pad', kind: 'other', massG: 300, points: { under: { kind: 'surface', at: [0, 0, 0], out: [0, -1, 0], up: [0, 0, 1] } } };
    draft.kit.parts.body.points.roof = { kind: 'surface', at: [0, 60, 20], out: [0, 1, 0], up: [0, 0, 1] };
    draft.builds.camera.pieces.shelf = { of: 'shelf' };
    draft.builds.camera.joints.shelf = { a: 'body/roof', b: 'shelf/under' };
  });
  const answer = askOne(sag, loose, 'glass=normal');
  expect(answer.verdict).toBe('unknown');
  expect(answer.says).toContain('Shelf on a pad');
});

test('softer joints all round: what is not entered gives in proportion, what was measured does not', () => {
  const softer = (share: number, own: boolean) => askOne(sag, withArm((draft) => {
    draft.assumptions = { 'hold.stiffness': share };
    if (!own) delete draft.kit.parts.body.points.top.stiffness;
  }), 'glass=normal').needs?.amount.value ?? Number.NaN;
  expect(softer(0.5, false) / softer(1, false)).toBeCloseTo(2, 6);
  expect(softer(0.5, true) / softer(1, true)).toBeCloseTo(1, 6);
});
