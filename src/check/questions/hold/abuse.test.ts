import { expect, test } from 'vitest';
import { headShoot } from '../../../../test/headShoot.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { type Draft, exampleShoot } from '../../../../test/tinyShoot.ts';
import { Checker } from '../../Checker.ts';
import type { Answer } from '../../answer.ts';
import { checkShoot } from '../../../shoot/read.ts';
import type { Shoot } from '../../../shoot/schema/shoot.ts';
import { questions } from '../index.generated.ts';

const asked = questions.filter(({ id }) => /^(hold|balance|swap|carry)\./.test(id));

/** Every answer of these disciplines, studied ones as well. Nothing throws, and every number is one. */
function answers(shoot: Shoot): readonly Answer[] {
  const checker = new Checker(shoot, asked);
  const all = checker.answers().flatMap((answer) => (answer.verdict === 'pending' ? (checker.study(answer.key) ?? []) : [answer]));
  for (const answer of all) expect(oddNumbers(answer), `${answer.key} has a number that is none`).toEqual([]);
  return all;
}

/** Places in an answer that hold NaN or infinity, in numbers or words. */
function oddNumbers(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value === 'string') return /\bNaN\b|Infinity|undefined/.test(value) ? [`${path}: ${value}`] : [];
  return typeof value === 'object' && value !== null ? Object.entries(value).flatMap(([key, one]) => oddNumbers(one, `${path}/${key}`)) : [];
}

test('a part of no mass is refused on reading, with its place; without a mass at all it is named as weighing nothing', () => {
  const draft = structuredClone(riggedShoot()) as Draft;
  draft.kit.parts.motor.massG = 0;
  const read = checkShoot(draft);
  expect(read.ok ? [] : read.faults.map(({ path }) => path)).toEqual(['kit/parts/motor/massG']);
  const all = answers(riggedShoot((one) => delete one.kit.parts.motor.massG));
  expect(all.some(({ notes }) => notes?.some((note) => note.includes('Weighs nothing here: Motor on a clamp')))).toBe(true);
  // What rests on the weight has not passed, and asks for it.
  const passed = all.filter(({ key, verdict }) => /^(hold\.(sag|wobble)|balance\.payload)/.test(key) && verdict !== 'fails');
  expect(passed.map(({ missing }) => missing?.map(({ path }) => path))).toEqual(passed.map(() => ['kit/parts/motor/massG']));
  expect(passed.length).toBeGreaterThan(0);
});

test('nothing weighs anything: no forces, no answer that claims to know', () => {
  const all = answers(riggedShoot((draft) => Object.values<Draft>(draft.kit.parts).forEach((part) => delete part.massG)));
  expect(all.filter(({ key, verdict }) => key.startsWith('balance.payload') && verdict === 'good')).toEqual([]);
});

test('clamps at no distance on a rod, and two pieces on one place', () => {
  const shoot = riggedShoot((draft) => {
    Object.assign(draft.kit.parts.rod, { beam: { outerMm: 15, lengthMm: 300, material: 'aluminium' } });
    const camera = draft.builds.camera;
    camera.pieces.second = { of: 'motor' };
    camera.joints.second = { a: 'rod-left/along', b: 'second/clamp', settings: { slideMm: 100, turnDeg: 0 } };
    camera.joints['motor-on-rod'].settings = { slideMm: 100, turnDeg: 0 };
  });
  expect(answers(shoot).find(({ key }) => key.startsWith('hold.wobble'))?.verdict).not.toBe('unknown');
});

test('no friction: every joint that anything tries to turn turns, and is named', () => {
  const none = { 'mechanics.faceFriction': 0, 'mechanics.rodFriction': 0, 'hold.armSlipNm': 0, 'hold.shoeSlipNm': 0 };
  const all = answers(riggedShoot((draft) => (draft.assumptions = none))).filter(({ key, needs }) => key.startsWith('hold.turning') && (needs?.amount.value ?? 0) > 0);
  expect(all.length).toBeGreaterThan(0);
  for (const { verdict, says } of all) expect([verdict, says]).toEqual(['fails', expect.stringMatching(/turns (where|on) /) as string]);
});

test('two heads, and a shoulder pad under a build for a tripod: both are named', () => {
  const shoot = headShoot((draft) => {
    draft.kit.parts.pad = { name: 'Spare pad', kind: 'shoulder pad', massG: 300, carrier: { kind: 'shoulder pad' } };
    Object.assign(draft.builds.camera.pieces, { pad: { of: 'pad' } });
  });
  expect(answers(shoot).find(({ key }) => key.startsWith('hold.stands'))).toMatchObject({ verdict: 'tight', says: 'Spare pad does not go with a build for a tripod.' });
  const twice = headShoot((draft) => (draft.builds.camera.pieces.again = { of: 'head', name: 'Second head' }));
  expect(answers(twice).find(({ key }) => key.startsWith('hold.stands'))?.says).toMatch(/Second head.* cannot both carry/);
});

test('two hundred pieces, one on the other', () => {
  const shoot = exampleShoot('demo', (draft) => {
    draft.kit.parts.box = {
      name: 'Small box', kind: 'other', massG: 20, solids: [{ shape: 'box', sizeMm: [20, 9, 20], atMm: [0, 5, 0] }],
      points: { under: { kind: 'thread', class: '1/4-20', sex: 'male', at: [0, 0, 0], out: [0, -1, 0], up: [0, 0, 1] }, over: { kind: 'thread', class: '1/4-20', sex: 'female', at: [0, 10, 0], out: [0, 1, 0], up: [0, 0, 1] } },
    };
    const { pieces, joints } = draft.builds.tripod;
    for (let n = 0; n < 200; n += 1) {
      pieces[`box-${n}`] = { of: 'box' };
      joints[`box-${n}`] = { a: n === 0 ? 'cage/top' : `box-${n - 1}/over`, b: `box-${n}/under` };
    }
    draft.setups['jetty-sticks'].glasses = ['set-50'];
    draft.shots = {};
    for (const setup of Object.keys(draft.setups)) if (setup !== 'jetty-sticks') delete draft.setups[setup];
    draft.needs.viewers = {};
  });
  const swing = answers(shoot).find(({ key }) => key.startsWith('hold.wobble'));
  expect(swing?.verdict).toBe('fails');
  expect(swing?.says).toContain('Small box');
}, 30_000);

test('every verdict on what holds or balances says that it is an estimate', () => {
  const judged = answers(exampleShoot('demo')).filter(({ key, verdict }) => /^(hold|balance)\./.test(key) && !key.startsWith('hold.stands') && verdict !== 'unknown');
  expect(judged.length).toBeGreaterThan(100);
  expect(judged.filter(({ notes }) => notes?.some((note) => note.startsWith('Estimate, not a load rating.')) !== true).map(({ key }) => key)).toEqual([]);
}, 30_000);
