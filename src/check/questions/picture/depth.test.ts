import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { depth } from './depth.ts';

/** A bare 50 mm at f/2.8 with 0.025 mm, its principal plane 100 mm ahead of the sensor. */
const bare = (shot: object, lens: object = { principalToSensorMm: 100 }) =>
  tinyShoot((draft: Draft) => {
    const part = draft.kit.parts['taking-58'];
    part.lens = { ...part.lens, focalLengthMm: 50, transmittance: 1, ...lens };
    draft.glasses.normal = { name: 'bare', stack: ['lens'], pieces: { lens: { of: 'taking-58' } } };
    draft.shots.portrait = { ...draft.shots.portrait, tStop: 2.8, circleOfConfusionMm: 0.025, ...shot };
  });
const limits = ({ steps = [] }: { steps?: readonly { says: string; amount?: { value: number } }[] }) =>
  ['sharp from', 'sharp to'].map((says) => (steps.find((step) => step.says === says)?.amount?.value ?? Number.NaN) * 1000);

test('the exact limits of f 50, N 2.8, c 0.025 at 3 m from the lens, from the sensor by its principal plane', () => {
  const [near, far] = limits(askOne(depth, bare({ subject: [{ atS: 0, distanceMm: 3100 }] })));
  expect(near).toBeCloseTo(2771.11 + 100, 2);
  expect(far).toBeCloseTo(3270.11 + 100, 2);
});

test('without a principal plane the same lens is reckoned from the sensor: the blur at its limits is what counts as sharp', () => {
  const answer = askOne(depth, bare({ subject: [{ atS: 0, distanceMm: 3000 }] }, {}));
  const [near = 0, far = 0] = limits(answer);
  // Thin lens at u + v = 3000; blur f²|d − s|/(N·d·(s − f)), OpenLensIO v1.0, section 4.3.
  const u = (3000 + Math.sqrt(3000 ** 2 - 4 * 50 * 3000)) / 2;
  for (const d of [near, far]) expect((2500 * Math.abs(d - 3000)) / (2.8 * (d - 3000 + u) * (u - 50))).toBeCloseTo(0.025, 9);
});

test('a focuser in front takes its own form and datum: both limits are as far in dioptres', () => {
  const answer = askOne(depth, tinyShoot((draft: Draft) => (draft.shots.portrait.circleOfConfusionMm = 0.025)));
  expect(answer.steps?.[0]?.says).toContain('a focuser in front');
  const offset = 18 + 62 + 70 + 52 / 2;
  const [near = 0, far = 0] = limits(answer).map((mm) => 1000 / (mm - offset));
  const at = 1000 / (1500 - offset);
  expect(near - at).toBeCloseTo(at - far, 9);
  // c·N/f² in dioptres, N = 2.8·√(τ of lens, block and focuser).
  expect(near - at).toBeCloseTo((0.025 * 2.8 * Math.sqrt((2 / 2.2) ** 2 * 0.85 * 0.85) * 1000) / 58 ** 2, 9);
});

test('a shot that asks a depth is judged by it; stopping down mends it', () => {
  const answer = askOne(depth, bare({ subject: [{ atS: 0, distanceMm: 3100 }], depthMm: 700 }));
  expect(answer).toMatchObject({ verdict: 'fails', has: { amount: { value: expect.closeTo(3270.11 - 2771.11, 1) as number } } });
  expect(answer.mends?.[0]).toMatchObject({ says: 'Stop down to T4', edit: { patches: [{ path: 'shots/portrait/tStop', value: 4 }] } });
  expect(answer.mends?.[0]?.use).toBeLessThanOrEqual(1);
});

test('where nobody pulls, the whole range must stay sharp from one focus', () => {
  const subject = [{ atS: 0, distanceMm: 2871.11 }, { atS: 3, distanceMm: 3370.11 }];
  const at = (more: object) => askOne(depth, bare({ subject, pulledBy: undefined, ...more }));
  // The limits of focus at 3 m: from there, both ends are just as soft as counts as sharp.
  expect(at({}).use).toBeCloseTo(1, 4);
  expect(at({ swaySpread: 30 })).toMatchObject({ verdict: 'fails' });
  expect(at({ tStop: 5.6 }).use).toBeCloseTo(0.5, 3);
});

test('beyond the hyperfocal distance it is sharp to infinity, which is no number', () => {
  expect(askOne(depth, bare({ subject: [{ atS: 0, distanceMm: 40_000 }] })).says).toContain('to infinity');
});
