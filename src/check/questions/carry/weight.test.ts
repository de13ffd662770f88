import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { weight } from './weight.ts';

const handheld = (handheldMassG?: number, change: (draft: Draft) => void = () => undefined) =>
  tinyShoot((draft) => {
    draft.builds.camera.purpose = 'handheld';
    if (handheldMassG !== undefined) draft.needs.handheldMassG = handheldMassG;
    change(draft);
  });

test('the sum of what is in the hands, against what was wanted, placed or not', () => {
  // By hand: body 1900, monitor 330, pack 680, lens 290, block 620, focuser 540.
  const answer = askOne(weight, handheld(4000));
  expect(answer.needs?.amount.value).toBeCloseTo(4360, 6);
  expect(answer.verdict).toBe('fails');
  expect(answer.notes?.[0]).toContain('Pain');
  expect(answer.steps?.slice(0, 3).map(({ amount }) => amount?.value)).toEqual([1900, 680, 620]);
});

test('without a wish the weight is there and the verdict waits: no limit is made up', () => {
  expect(askOne(weight, handheld())).toMatchObject({ verdict: 'unknown', unknown: 'not entered', needs: { amount: { value: 4360 } }, missing: [{ path: 'needs/handheldMassG' }] });
});

test('on a tripod it does not arise', () => expect(askAll(weight, tinyShoot())).toEqual([]));

test('the heaviest lens of the set counts, and what the change adds is said', () => {
  const shoot = riggedShoot((draft) => {
    draft.builds.camera.purpose = 'shoulder';
    draft.needs.shoulderMassG = 9000;
    draft.kit.parts['taking-90'].massG = 700;
  });
  const answer = askOne(weight, shoot);
  expect(askAll(weight, shoot)).toHaveLength(1);
  // The 4360 of the tiny shoot with plate 700, two rods 190 and motor 260, the 58 mm of 290 changed for 700.
  expect(answer.needs?.amount.value).toBeCloseTo(4360 + 700 + 190 + 260 + 410, 6);
  expect(answer.steps?.map(({ amount }) => amount?.value)).toContain(410);
});

test('4.36 kg are 42.76 N, 14.25 % of 300 N: below 15 %, where Rohmert’s curve sets no end; of 90 N 47.5 %, and 1.18 min by hand', () => {
  expect(askOne(weight, handheld(9000)).steps?.some(({ says }) => says.includes('sets no end'))).toBe(true);
  // −1.5 + 2.1/f − 0.6/f² + 0.1/f³ with f = 42.757/90 = 0.47508: −1.5 + 4.4203 − 2.6584 + 0.9326.
  const weak = askOne(weight, handheld(9000, (draft) => {
    draft.assumptions = { 'mechanics.handStrengthN': 90 };
    draft.shots.portrait.holdMin = 3;
  }));
  expect(weak.steps?.find(({ says }) => says.includes('arms tire'))?.amount?.value).toBeCloseTo(1.194, 2);
  expect(weak.steps?.some(({ says }) => says.includes('longer than arms bear it'))).toBe(true);
});

test('a lighter pack on the same plate is offered as an edit, and what it comes to', () => {
  const shoot = handheld(4500, (draft) => {
    draft.kit.parts.seat = { name: 'Pack plate', kind: 'battery plate', massG: 100, batteryPlate: { mount: 'wedge', packs: 1 } };
    draft.kit.parts['pack-98'].pack.mount = 'wedge';
    draft.kit.parts['pack-50'] = { name: '50 Wh pack', kind: 'battery', massG: 380, pack: { nominalV: 14.4, capacityAh: 3.5, mount: 'wedge' } };
    draft.builds.camera.pieces.seat = { of: 'seat', packs: ['pack-98'] };
  });
  // 4360 + 100 + 680 = 5140; 300 less: 4840 over 4500.
  const { mends = [] } = askOne(weight, shoot);
  expect(mends.find(({ edit }) => edit !== undefined)).toMatchObject({ edit: { patches: [{ path: 'builds/camera/pieces/seat/packs', value: ['pack-50'] }] }, use: expect.closeTo(4840 / 4500, 6) as number });
  expect(mends[0]).toMatchObject({ says: expect.stringContaining('belt') as string, use: expect.closeTo(4460 / 4500, 6) as number });
});

test('nothing weighed: it says which pieces', () => {
  const answer = askOne(weight, handheld(4000, (draft) => { for (const part of Object.values<Draft>(draft.kit.parts)) delete part.massG; }));
  expect(answer).toMatchObject({ verdict: 'unknown', says: expect.stringContaining('Body') as string });
});
