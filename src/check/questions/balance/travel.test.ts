import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { headShoot } from '../../../../test/headShoot.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { travel } from './travel.ts';

test('a centre 17 mm behind the head wants the plate 17 mm forward, of 45 there are', () => {
  const answer = askOne(travel, headShoot());
  expect(answer.needs?.amount.value).toBeCloseTo(17, 3);
  expect(answer.has?.amount.value).toBe(45);
  expect(answer.verdict).toBe('good');
});

test('a plate that slides 20 mm in all is too short: the body goes 17 mm forward on its own plate, and the edit brings what it promises', () => {
  const shoot = headShoot((draft) => (draft.kit.parts.head.carrier.plateTravelMm = 20));
  const answer = askOne(travel, shoot);
  expect(answer).toMatchObject({ verdict: 'fails', mends: [{ says: expect.stringMatching(/Slide Body 17\s?mm forward on Plate/) as string, use: expect.closeTo(0, 9) as number }] });
  const after = applyEdit(shoot, answer.mends![0]!.edit!);
  if (!after.ok) throw new Error('The edit has faults.');
  expect(askOne(travel, after.value.shoot).use).toBeCloseTo(answer.mends![0]!.use!, 9);
});

test.each(['head/plate', 'plate/bottom'])('10 mm of the way made already, stated or found, counted on %s: 17 mm from the middle are 17 mm', (on) => {
  const asked = (slideMm: unknown) => askOne(travel, headShoot((draft) => {
    const [part, point] = on.split('/') as [string, string];
    draft.kit.parts[part].points[point].slideMm = [-45, 45];
    // Ahead for the plate on the head is back for the head on the plate.
    draft.builds.camera.joints.head.settings = { slideMm };
    delete draft.kit.parts.head.carrier.plateTravelMm;
  }));
  const value = on === 'head/plate' ? 10 : -10;
  for (const setting of [value, { auto: 'shared', start: value }]) expect(asked(setting)).toMatchObject({ needs: { amount: { value: expect.closeTo(17, 3) as number }, from: expect.stringContaining('forward') as string }, has: { amount: { value: 45 } } });
});

test('two lenses, one heavy in front: the set is centred, and half of what parts them is left', () => {
  // Body of 2000 g with its middle at −37 mm, the head at −20; a long lens of 2000 g with its middle at 18 + 44 = 62: balances at −37, and at 12.5.
  const shoot = headShoot((draft) => {
    draft.kit.parts.head.carrier.plateTravelMm = 40;
    draft.kit.parts['taking-90'].massG = 2000;
  });
  const answer = askOne(travel, shoot);
  const spread = answer.steps?.at(-1)?.amount?.value ?? 0;
  expect(spread).toBeCloseTo((62 + 37) / 2, 6);
  for (const mend of answer.mends ?? []) {
    if (mend.edit === undefined) continue;
    expect(mend.use).toBeCloseTo(spread / 2 / 20, 1);
    const after = applyEdit(shoot, mend.edit);
    if (!after.ok) throw new Error('The edit has faults.');
    expect(askOne(travel, after.value.shoot).use).toBeCloseTo(mend.use!, 9);
  }
  expect(answer.mends?.some(({ edit }) => edit !== undefined)).toBe(true);
});

test('where the camera is fixed on its plate it is moved by hand, and a pack goes so far that mass × way is the same', () => {
  const answer = askOne(travel, headShoot((draft) => {
    draft.setups.sticks.glasses = ['normal'];
    draft.kit.parts.head.carrier.plateTravelMm = 20;
    delete draft.kit.parts.plate.points.top.slideMm;
    Object.assign(draft.kit.parts.motor, { massG: 500, batteryPlate: { mount: 'wedge' } });
  }));
  const [byHand, pack] = answer.mends ?? [];
  const offMm = answer.needs?.amount.value ?? 0;
  expect(byHand?.says).toMatch(/^Set the camera/);
  // 2500 g are off by so much: 500 g have to go five times as far.
  expect(Number(/(\d+)\s?mm further/.exec(pack?.says ?? '')?.[1])).toBeCloseTo(5 * offMm, -1);
  expect(pack?.use).toBeLessThan(0.05);
});

test('without a head it does not arise', () => expect(askAll(travel, riggedShoot())).toEqual([]));
