import { expect, test } from 'vitest';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { Asking } from '../Asking.ts';
import { doneWords } from './changeWords.ts';
import { lensChange } from './lensChange.ts';

/** The motor stays on its rod, the block in front of it; the body slides on the plate by as much as the lenses differ. */
const sliding = () => riggedShoot((draft) => {
  const { camera } = draft.builds;
  Object.assign(camera, { root: 'body', purpose: 'shoulder' });
  draft.kit.parts.plate.carrier = { kind: 'shoulder pad' };
  draft.kit.parts.plate.kind = 'shoulder pad';
  camera.joints['body-on-plate'].settings = { slideMm: { auto: 'perLens', low: -60, high: 60 } };
  camera.joints['motor-on-rod'].settings = { slideMm: 140, turnDeg: { auto: 'shared', low: -90, high: 90 } };
});

const says = (from: string, to: string) => lensChange(new Asking(new Ledger(sliding())), { setup: 'sticks', glass: from }, { setup: 'sticks', glass: to }).steps.map((step) => doneWords(step).replaceAll(/\s/g, ' '));

// By hand: the lenses are 62 and 88 mm long. What stands on the shoulder stays; with the longer lens the body goes back.
test('a body that slides goes back for a longer lens, on the plate that stands on the shoulder, while nothing is in its mount', () => {
  const longer = says('normal', 'long');
  const slide = longer.findIndex((one) => one === 'slide Body 26 mm back on Plate with rod seats');
  expect(longer.filter((one) => one.startsWith('slide'))).toHaveLength(1);
  expect([longer[slide - 1], longer[slide + 1]]).toEqual(['take off 58 mm taking lens', 'put on 90 mm taking lens']);
  expect(says('long', 'normal')).toContain('slide Body 26 mm forward on Plate with rod seats');
});
