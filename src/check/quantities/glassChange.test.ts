import { expect, test } from 'vitest';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import type { Draft } from '../../../test/tinyShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { Asking } from '../Asking.ts';
import { doneWords } from './changeWords.ts';
import { lensChange } from './lensChange.ts';

const FIXING = /open|fix|swing|bring|aside|back on|take|put/;
const changed = (change: (draft: Draft) => void) => {
  const { steps, minutes } = lensChange(new Asking(new Ledger(riggedShoot(change))), { setup: 'sticks', glass: 'normal' }, { setup: 'sticks', glass: 'long' });
  return { says: steps.map((step) => doneWords(step)).filter((one) => FIXING.test(one)), minutes };
};

/** A support on the right rod, under what `holds` names. */
const supporting = (holds: 'block' | 'lens') => (draft: Draft): void => {
  const { parts } = draft.kit;
  parts.support = {
    name: 'Support', kind: 'support', massG: 150,
    points: { rod: { kind: 'rod clamp', class: '15 mm', sex: 'female', at: [-30, 0, 0], out: [0, 0, -1], up: [0, 1, 0] }, top: { kind: 'surface', at: [0, 16, 0], out: [0, 1, 0], up: [0, 0, 1] } },
  };
  const under = { kind: 'surface', at: [0, -40, 20], out: [0, -1, 0], up: [0, 0, 1] };
  for (const id of ['block-1-5', 'taking-58', 'taking-90']) parts[id].points.under = under;
  draft.builds.camera.pieces.support = { of: 'support' };
  draft.builds.camera.joints['support-on-rod'] = { a: 'rod-right/along', b: 'support/rod', settings: { slideMm: 80 } };
  for (const glass of Object.values<{ joints: object }>(draft.glasses)) Object.assign(glass.joints, { support: { a: 'support/top', b: `${holds}/under` } });
};

// Common practice: what carries a piece from below lets go before its seat does, and holds after it.
test('a block that is set aside is let go by its support, and gets it back once it sits on the lens', () => {
  const { says, minutes } = changed(supporting('block'));
  expect(says).toEqual([
    'swing Motor on a clamp clear of Variable diopter', 'open 1.5× block from Support', 'open 1.5× block from 58 mm taking lens', 'set 1.5× block and Variable diopter aside, still together', 'open 58 mm taking lens from Body',
    'take off 58 mm taking lens', 'put on 90 mm taking lens', 'fix 90 mm taking lens to Body', 'put 1.5× block and Variable diopter back on', 'fix 1.5× block to 90 mm taking lens', 'fix 1.5× block to Support',
    'bring Motor on a clamp into mesh with Variable diopter',
  ]);
  // By hand: one joint more opened and closed, 0.2 min each.
  expect(minutes - changed(() => undefined).minutes).toBeCloseTo(0.4, 9);
});

test('a lens goes into its mount before it is fixed to its support, and out of it after', () => {
  const { says } = changed(supporting('lens'));
  expect(says.slice(3, 6)).toEqual(['open 58 mm taking lens from Support', 'open 58 mm taking lens from Body', 'take off 58 mm taking lens']);
  expect(says.slice(6, 9)).toEqual(['put on 90 mm taking lens', 'fix 90 mm taking lens to Body', 'fix 90 mm taking lens to Support']);
});

test('what hangs on a block alone goes aside with it and stays fixed and in mesh', () => {
  const { says } = changed((draft) => {
    draft.kit.parts['block-1-5'].points.side = { kind: 'rod clamp', class: '15 mm', sex: 'female', at: [96, 0, 40], out: [0, 0, 1], up: [0, 1, 0] };
    draft.builds.camera.pieces.riding = { of: 'rod' };
    draft.kit.parts.rod.count = 3;
    Object.assign(draft.builds.camera.joints, { riding: { a: 'block/side', b: 'riding/back' }, 'motor-on-rod': { a: 'riding/along', b: 'motor/clamp', settings: { slideMm: 20 } } });
  });
  expect(says.filter((one) => /swing|bring|rod/.test(one))).toEqual([]);
});
