import { describe, expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { lift } from './lift.ts';

/** Nothing that weighs to speak of but a body 200 mm wide and 500 mm long, on legs of the assumed 1450 mm. */
const box = (massG: number, change: (draft: Draft) => void = () => undefined) =>
  tinyShoot((draft) => {
    for (const part of Object.values<Draft>(draft.kit.parts)) part.massG = 1e-15;
    draft.kit.parts.body.massG = massG;
    draft.kit.parts.body.solids = [{ shape: 'box', sizeMm: [200, 150, 500], atMm: [0, 0, -200] }];
    change(draft);
  });

describe('by hand from the equation of NIOSH 94-110, hands underneath, from the side that is 200 mm deep', () => {
  // Picked up: 23 · 25/35 · (1 − 0.003 · 75) · (0.82 + 4.5/145) · 0.9 = 9.752 kg; set down: 23 · 25/30 · (1 − 0.003 · 70) · 0.85103 · 0.9 = 11.597 kg.
  const steps = (of: ReturnType<typeof askOne>, word: string) => of.steps?.find(({ says }) => says.includes(word))?.amount?.value;
  test('the limit at both ends, the lower one counts', () => {
    const answer = askOne(lift, box(8000));
    expect(answer).toMatchObject({ verdict: 'good', needs: { amount: { value: 8000 } } });
    expect(Math.abs((answer.has?.amount.value ?? 0) - 9752)).toBeLessThan(30);
    expect(Math.abs((steps(answer, 'set down') ?? 0) - 11_597)).toBeLessThan(30);
    expect(answer.use).toBeCloseTo(8 / 9.752, 2);
  });
  test.each([[9500, 'tight'], [12_000, 'fails']])('%i g: %s', (massG, verdict) => expect(askOne(lift, box(massG)).verdict).toBe(verdict));
  test('from a cart 750 mm high the set-down decides: 23 · 25/30 · 0.79 · (0.82 + 4.5/70) · 0.9 = 12.051 kg; two people lift a third more', () => {
    const { use = 0, mends = [] } = askOne(lift, box(12_000));
    // The assumed cart is 750, the legs 1450: 700 mm apart.
    expect(mends.find(({ says }) => says.includes('cart'))?.use).toBeCloseTo(12 / 12.051, 1);
    // HSE L23: two people two thirds of their sum, 4/3 of one.
    expect(mends.find(({ says }) => says.includes('two people'))?.use).toBeCloseTo((use * 3) / 4, 9);
  });
});

test('two handles are a good grip and save the stoop', () => {
  const handles = box(12_000, (draft) => {
    draft.kit.parts.grip = { name: 'Side grip', kind: 'handle', count: 2 };
    Object.assign(draft.builds.camera.pieces, { 'grip-left': { of: 'grip' }, 'grip-right': { of: 'grip' } });
  });
  expect(askOne(lift, handles).has?.from).toContain('grip good');
  expect(askOne(lift, handles).use).toBeLessThan(askOne(lift, box(12_000)).use ?? 0);
});

test('legs above the reach of arms: nobody should lift it there, and lowering them helps', () => {
  const answer = askOne(lift, box(5000, (draft) => {
    draft.kit.parts.legs = { name: 'Legs', kind: 'legs', massG: 4000, carrier: { kind: 'legs', heightMm: 1800 } };
    draft.builds.camera.pieces.legs = { of: 'legs' };
  }));
  expect(answer).toMatchObject({ verdict: 'fails', needs: { amount: { value: 5000 } } });
  expect(Number.isFinite(answer.use)).toBe(true);
  expect(answer.mends?.find(({ says }) => says.startsWith('Lower'))?.use).toBeLessThan(1);
  expect(answer.steps?.some(({ says, amount }) => says.includes('carried by itself') && amount?.value === 4000)).toBe(true);
});

test('a station is asked about once, without its stand', () => {
  const shoot = box(2000, (draft) => {
    Object.assign(draft.kit.parts, {
      stand: { name: 'Stand', kind: 'stand', massG: 2400, carrier: { kind: 'stand', heightMm: 1300 } }, screen: { name: 'Large screen', kind: 'monitor', massG: 6000 },
    });
    draft.builds.village = { name: 'Village', purpose: 'viewing station', station: true, pieces: { stand: { of: 'stand' }, screen: { of: 'screen' } } };
    draft.setups.sticks.stations = ['village'];
  });
  expect(askAll(lift, shoot)).toHaveLength(2);
  expect(askOne(lift, shoot, 'village')).toMatchObject({ needs: { amount: { value: 6000 } }, says: expect.stringContaining('Stand') as string });
});

test('nothing weighed: it says which pieces; the note says what the equation leaves out', () => {
  expect(askOne(lift, box(1, (draft) => Object.values<Draft>(draft.kit.parts).forEach((part) => delete part.massG)))).toMatchObject({ verdict: 'unknown', says: expect.stringContaining('Body') as string });
  expect(askOne(lift, box(8000)).notes?.[0]).toContain('does not cover holding');
});

test('while the mass of one piece is not entered, nothing passes; what is too heavy without it stays so', () => {
  const without = (massG: number) => askOne(lift, box(massG, (draft) => delete draft.kit.parts['taking-58'].massG));
  expect(without(8000)).toMatchObject({ verdict: 'unknown', unknown: 'not entered', missing: [{ path: 'kit/parts/taking-58/massG' }] });
  expect(without(8000).use).toBeUndefined();
  expect(without(12_000).verdict).toBe('fails');
});
