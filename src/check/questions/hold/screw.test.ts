import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { screw } from './screw.ts';

/** A body with a kilogram on a screw of its top, `outMm` to the side; contact ring of 4 to 15 mm. */
const withWeight = (outMm: number, change: (draft: Draft) => void = () => undefined) =>
  tinyShoot((draft) => {
    draft.kit.parts.body.points.top = { kind: 'thread', class: '1/4-20', sex: 'female', at: [0, 60, -20], out: [0, 1, 0], up: [0, 0, 1] };
    draft.kit.parts.weight = {
      name: 'Weight', kind: 'other', massG: 1000, centreMm: [outMm, 0, 0],
      points: { foot: { kind: 'hole', class: '1/4-20', sex: 'male', at: [0, 0, 0], out: [0, -1, 0], up: [0, 0, 1], contactMm: [4, 15] } },
    };
    draft.builds.camera.pieces.weight = { of: 'weight' };
    draft.builds.camera.joints = { ...draft.builds.camera.joints, weight: { a: 'body/top', b: 'weight/foot', torqueNm: 2 } };
    draft.assumptions = { 'mechanics.nutFactor': 0.2, 'mechanics.handlingFactor': 1 };
    change(draft);
  });

test('a nod opens the faces when it beats the preload times the core of the ring', () => {
  const answer = askOne(screw, withWeight(400), 'weight');
  // Statics by hand, upside down: 1 kg pulls with 9.80665 N and nods with 0.4 m of it. 1575 N (handbook) × (15² + 4²)/(4 × 15) mm = 6.325 N·m would open the faces by a nod alone;
  // the pull takes its own share of that.
  const [pullN, coreM] = [9.80665, (15 ** 2 + 4 ** 2) / 60_000];
  expect(answer.needs?.amount.value).toBeCloseTo(0.4 * pullN, 3);
  expect(answer.has?.amount.value).toBeCloseTo((2 / (0.2 * 6.35e-3)) * coreM / (1 + coreM / 0.4), 3);
  expect(answer.verdict).toBe('good');
  expect(answer.notes).toContain('Estimate, not a load rating.');
});

test('twice as far it is nearer to its limit; tightened as it says, it holds', () => {
  const shoot = withWeight(650);
  const answer = askOne(screw, shoot, 'weight');
  expect(answer.verdict).toBe('fails');
  const mend = answer.mends?.find(({ edit }) => edit !== undefined);
  const edited = applyEdit(shoot, mend?.edit ?? { says: '', patches: [] });
  const after = edited.ok ? askOne(screw, edited.value.shoot, 'weight') : answer;
  expect(after.verdict).toBe('good');
  expect(after.use).toBeCloseTo(mend?.use ?? Number.NaN, 6);
});

test('each cure is what the changed file gives: tightened less, or with a second screw', () => {
  const weak = { 'hold.screwStressMPa': 140 };
  const file = (change: (draft: Draft) => void = () => undefined) => withWeight(650, (draft) => {
    Object.assign(draft.assumptions, weak);
    change(draft);
  });
  const twice = askOne(screw, file(), 'weight').mends?.find(({ says }) => says.startsWith('Another screw'));
  const after = askOne(screw, file((draft) => (draft.kit.parts.weight.points.foot.screws = 2)), 'weight');
  expect(after.use).toBeCloseTo(twice?.use ?? Number.NaN, 9);
  expect(after.says).toContain('The 2 screws between');
  const tight = file((draft) => Object.assign(draft.kit.parts.weight, { centreMm: [100, 0, 0] }) && (draft.builds.camera.joints.weight.torqueNm = 4.5));
  const less = askOne(screw, tight, 'weight').mends?.[0];
  const eased = applyEdit(tight, less?.edit ?? { says: '', patches: [] });
  expect(eased.ok && askOne(screw, eased.value.shoot, 'weight').use).toBeCloseTo(less?.use ?? Number.NaN, 9);
});

test('where both ends say how many screws, the fewer count; where one does, it is believed by its name', () => {
  const screws = (foot: number, top?: number) => askOne(screw, withWeight(400, (draft) => {
    draft.kit.parts.weight.points.foot.screws = foot;
    if (top !== undefined) draft.kit.parts.body.points.top.screws = top;
  }), 'weight').steps?.[0]?.says;
  expect(screws(2)).toContain('each of 2 screws, as only Weight says,');
  expect(screws(2, 2)).toContain('each of 2 screws 1/4-20');
  expect(screws(2, 1)).toContain('on a 1/4-20');
});

test('over-tightened, the core gives: 210 MPa on 20.5 mm² are 4310 N, less for the twist', () => {
  // ASME B1.1: 20.5 mm² for 1/4-20 (handbook); 6 N·m at nut factor 0.2 draw 4724 N.
  const answer = askOne(screw, withWeight(1, (draft) => (draft.builds.camera.joints.weight.torqueNm = 6)), 'weight');
  expect(answer.verdict).toBe('fails');
  expect(answer.says).toContain('core');
  expect(answer.has?.amount.value).toBeCloseTo(4310 / 1.3, -1);
  expect(answer.mends?.[0]?.use).toBeLessThan(1);
});

test('without the mass of what hangs on it no screw passes; a mass elsewhere is nothing to it', () => {
  const without = (part: string) => askOne(screw, withWeight(400, (draft) => {
    draft.builds.camera.pieces.more = { of: 'more' };
    draft.kit.parts.more = { ...structuredClone(draft.kit.parts.weight), name: 'More weight' };
    draft.kit.parts.body.points.side = { kind: 'thread', class: '1/4-20', sex: 'female', at: [60, 0, -20], out: [1, 0, 0], up: [0, 0, 1] };
    draft.builds.camera.joints.more = { a: 'body/side', b: 'more/foot', torqueNm: 2 };
    delete draft.kit.parts[part].massG;
  }), 'joints/weight');
  expect(without('weight')).toMatchObject({ verdict: 'unknown', missing: [{ path: 'kit/parts/weight/massG' }] });
  expect(without('more').verdict).toBe('good');
});

test('what has no place yet is named as left out', () => {
  const notes = askOne(screw, withWeight(400), 'weight').notes?.join(' ');
  expect(notes).toContain('left out');
  expect(notes).toContain('5-inch monitor');
});

test('nothing screwed: not asked', () => expect(askAll(screw, tinyShoot())).toEqual([]));
