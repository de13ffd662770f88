import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import type { Draft } from '../../../../test/tinyShoot.ts';
import { matteBox } from './matteBox.ts';

/** A box on the left rod, its rear so far ahead of the focuser's front (body 18, lens 62, block 70, focuser 52: 202 mm) and so far beside the axis. */
const boxed = (aheadMm: number, besideMm: number, panes = 1) => riggedShoot((draft: Draft) => {
  draft.kit.parts.box = {
    name: 'Box', kind: 'matte box', massG: 900,
    matteBox: { fit: 'rods', openings: { tray: { aheadOfFrontMm: 10, widthMm: 130, heightMm: 100, holds: 'filter' } } },
    points: {
      rear: { kind: 'front', at: [-30 + besideMm, 80, 0], out: [0, 0, -1], up: [0, 1, 0] },
      clamp: { kind: 'rod clamp', class: '15 mm', at: [0, 0, 0], out: [0, 0, -1], up: [0, 1, 0] },
    },
  };
  draft.kit.parts.pane = { name: 'Pane', kind: 'filter', filter: { kind: 'clear', widthMm: 100, heightMm: 100 } };
  draft.builds.camera.pieces.box = { of: 'box' };
  for (let n = 0; n < panes; n += 1) draft.builds.camera.pieces[`pane-${n}`] = { of: 'pane' };
  // The plate's top is under the body's base at z −20; rods start 60 ahead of it, at 40.
  draft.builds.camera.joints.box = { a: 'rod-left/along', b: 'box/clamp', settings: { slideMm: 162 + aheadMm } };
  draft.setups.sticks.glasses = ['normal'];
});

test('no box, no question', () => expect(askAll(matteBox, riggedShoot())).toEqual([]));

test.each([[10, 0, 'good'], [40, 0, 'fails'], [10, 20, 'fails'], [-4, 0, 'fails']] as const)('%d mm ahead, %d mm beside: %s', (ahead, beside, verdict) => {
  const answer = askOne(matteBox, boxed(ahead, beside));
  expect(answer.verdict).toBe(verdict);
  expect(answer.steps?.[0]?.amount?.value).toBeCloseTo(beside, 6);
  expect(answer.steps?.[1]?.amount?.value).toBeCloseTo(ahead, 6);
});

test('two panes and one stage', () => expect(askOne(matteBox, boxed(10, 0, 2)).says).toBe('Box has no stage left for Pane.'));
