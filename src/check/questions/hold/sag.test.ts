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

test('a tenth of the stiffness, ten times the sag; a second screw mends it', () => {
  const answer = askOne(sag, withArm((draft) => (draft.kit.parts.body.points.top.stiffness = { ...NODS, xNmPerRad: 10, yNmPerRad: 10 })), 'glass=normal');
  expect(answer.verdict).toBe('fails');
  expect(answer.mends?.[0]).toMatchObject({ says: expect.stringContaining('Put a second screw between Weight on an arm') as string });
  expect(answer.mends?.[0]?.use).toBeLessThan(0.1);
  expect(answer.notes).toContain('Estimate, not a load rating.');
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
