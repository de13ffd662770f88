import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { gimbalShoot } from '../../../../test/gimbalShoot.ts';
import { headShoot } from '../../../../test/headShoot.ts';
import { gimbal } from './gimbal.ts';

test('17 mm forward of the 40 there are, 4 mm down of 10: the worse counts', () => {
  const answer = askOne(gimbal, gimbalShoot());
  expect(answer).toMatchObject({ verdict: 'good', use: expect.closeTo(17 / 40, 3) as number });
  expect(answer.steps?.[0]?.says).toMatch(/4\s?mm down, 17\s?mm forward/);
  expect(answer.notes).toContain('Fingers, hair and cables clear when a gimbal starts.');
});

test('where no joint says how far it slides, half the travel of the gimbal’s plate is what there is', () => {
  const stated = (plateTravelMm: number, heightTravelMm?: number) => askOne(gimbal, gimbalShoot((draft) => {
    delete draft.kit.parts.head.points.plate.slideMm;
    delete draft.kit.parts.head.points.plate.heightMm;
    Object.assign(draft.kit.parts.head.carrier, { plateTravelMm }, heightTravelMm === undefined ? {} : { heightTravelMm });
  }));
  expect(stated(60, 20)).toMatchObject({ verdict: 'good', has: { amount: { value: 30 } } });
  expect(stated(30, 20)).toMatchObject({ verdict: 'fails', says: expect.stringContaining('forward') as string });
  // Fore and aft is enough, but up and down nothing is entered, and 4 mm are asked.
  expect(stated(60)).toMatchObject({ verdict: 'unknown', missing: [{ path: 'kit/parts/head/carrier/heightTravelMm' }] });
});

test('by hand it is brought to the middle of the set, and a pack goes so far that mass × way is the same', () => {
  const answer = askOne(gimbal, gimbalShoot((draft) => {
    draft.setups.sticks.glasses = ['normal'];
    draft.kit.parts.head.points.plate.slideMm = [-5, 5];
    Object.assign(draft.kit.parts.motor, { massG: 400, batteryPlate: { mount: 'wedge' } });
  }));
  expect(answer.verdict).toBe('fails');
  const pack = answer.mends?.find(({ says }) => says.startsWith('Put '));
  // 2400 g in all: 400 g go six times as far as the common centre has to.
  expect(Number(/(\d+)\s?mm further/.exec(pack?.says ?? '')?.[1])).toBeCloseTo(6 * (answer.needs?.amount.value ?? 0), -1);
});

test('a lens that extends takes the centre along: 500 g by 10 mm are 2 mm of 2.5 kg, and the middle is balanced', () => {
  const answer = askOne(gimbal, gimbalShoot((draft) => {
    draft.setups.sticks.glasses = ['normal'];
    Object.assign(draft.kit.parts.focuser, { massG: 500, centreMm: [0, 0, 26] });
    draft.kit.parts.focuser.focus.gearTravelMm = 10;
    draft.kit.parts.focuser.solids[0].moves = 'with focus';
  }));
  expect(answer.steps?.at(-1)).toMatchObject({ says: expect.stringContaining('from infinity to close') as string, amount: { value: expect.closeTo(2, 6) as number } });
});

test('without axes entered they are asked for; without places the pieces are named; on a head it does not arise', () => {
  expect(askOne(gimbal, gimbalShoot((draft) => delete draft.kit.parts.head.carrier.axesAtMm))).toMatchObject({ verdict: 'unknown', missing: [{ path: 'kit/parts/head/carrier/axesAtMm', says: 'where the axes of a gimbal meet of Gimbal' }] });
  expect(askOne(gimbal, gimbalShoot((draft) => delete draft.builds.camera.joints.head))).toMatchObject({ verdict: 'unknown', says: 'Body is not joined to Gimbal yet: without places nothing can be balanced.' });
  expect(askOne(gimbal, gimbalShoot((draft) => delete draft.kit.parts.body.massG))).toMatchObject({ verdict: 'unknown', missing: [{ path: 'kit/parts/body/massG' }] });
  expect(askAll(gimbal, headShoot())).toEqual([]);
});
