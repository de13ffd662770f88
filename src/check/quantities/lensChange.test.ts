import { expect, test } from 'vitest';
import { headShoot } from '../../../test/headShoot.ts';
import type { Draft } from '../../../test/tinyShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { Asking } from '../Asking.ts';
import { doneWords } from './changeWords.ts';
import { lensChange } from './lensChange.ts';

const balancing = (change: (draft: Draft) => void) =>
  lensChange(new Asking(new Ledger(headShoot(change))), { setup: 'sticks', glass: 'normal' }, { setup: 'sticks', glass: 'long' }).steps
    .filter(({ kind }) => kind === 'balance').map((step) => doneWords(step).replaceAll(/\s/g, ' '));

test('on a head a camera is balanced again by as much as its centre moves over the head, which weighs nothing in it', () => {
  // By hand: 2 kg of body alone weigh, and slide back by what the lenses differ, 26 mm.
  const slidesBack = (draft: Draft): void => {
    const { joints } = draft.builds.camera;
    joints['body-on-plate'].settings = { slideMm: { auto: 'perLens', low: -60, high: 60 } };
    joints['motor-on-rod'].settings = { slideMm: 140, turnDeg: { auto: 'shared', low: -90, high: 90 } };
  };
  expect(balancing(slidesBack)).toEqual(['slide the camera to balance on its head: its centre of mass has moved 26 mm back']);
  // By hand: a body and a lens of 2 kg each; their middle is half as far ahead as the lens’s, which is half of 26 mm further.
  const heavyLenses = (draft: Draft): void => {
    for (const id of ['taking-58', 'taking-90']) draft.kit.parts[id].massG = 2000;
  };
  expect(balancing(heavyLenses)).toEqual(['slide the camera to balance on its head: its centre of mass has moved 6.5 mm forward']);
});
