import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { Asking } from '../../Asking.ts';
import { deliveryFrame } from '../../quantities/deliveryFrame.ts';
import { frame } from './frame.ts';

/** The tiny shoot with another canvas, squeeze and delivery. */
const shot = (canvas: readonly [number, number], squeeze: number, delivery: object) =>
  tinyShoot((draft: Draft) => {
    const { modes } = draft.kit.parts.body.body;
    modes['open-gate'] = { ...modes['open-gate'], widthPx: canvas[0], heightPx: canvas[1] };
    draft.kit.parts['block-1-5'].block.squeeze = squeeze;
    draft.needs.delivery = delivery;
  });

// The ASC Framing Decision List's published cases, before its rounding to whole or even pixels.
test.each([
  { canvas: [4448, 3096], squeeze: 1, delivery: { aspect: 2, widthPx: 3840, protection: 0.1 }, guarded: [4448, 2224, 0, 436], kept: [4003.2, 2001.6, 222.4, 547.2] },
  { canvas: [4096, 3432], squeeze: 2, delivery: { aspect: 2.39, widthPx: 4096 }, guarded: [4096, 3427.62, 0, 2.19], kept: [4096, 3427.62, 0, 2.19] },
] as const)('the frame lies where the framing decision list puts it: $canvas at $squeeze', ({ canvas, squeeze, delivery, guarded, kept }) => {
  const cut = deliveryFrame(new Asking(new Ledger(shot(canvas, squeeze, delivery))), { setup: 'sticks', glass: 'normal' });
  for (const [area, [widthPx, heightPx, xPx, yPx]] of [[cut.guarded, guarded], [cut.frame, kept]] as const) {
    expect(area.canvas.widthPx).toBeCloseTo(widthPx, 1);
    expect(area.canvas.heightPx).toBeCloseTo(heightPx, 1);
    expect(area.canvas.xPx).toBeCloseTo(xPx, 1);
    expect(area.canvas.yPx).toBeCloseTo(yPx, 1);
  }
});

test('half the columns delivered are widened to all of them, and a note says so', () => {
  const answer = askOne(frame, shot([2048, 1716], 2, { aspect: 2.39, widthPx: 4096 }));
  expect(answer).toMatchObject({ verdict: 'tight', needs: { amount: { value: 4096 } }, has: { amount: { value: 4096 } } });
  expect(answer.notes?.[0]).toMatch(/2048 recorded columns/);
});

test('too few lines fail, and a larger mode of the body mends it', () => {
  const answer = askOne(frame, tinyShoot((draft: Draft) => {
    const { modes } = draft.kit.parts.body.body;
    modes.small = { ...modes['open-gate'], name: 'small', widthPx: 1920, heightPx: 1280 };
    draft.setups.sticks.mode = 'small';
  }));
  expect(answer.verdict).toBe('fails');
  // 3840 across against 1920 × 1.5.
  expect(answer.use).toBeCloseTo(3840 / 2880, 3);
  expect(answer.mends).toMatchObject([{ edit: { patches: [{ path: 'setups/sticks/mode', value: 'open-gate' }] } }]);
});

test('a picture with black above and below counts without the black', () => {
  const answer = askOne(frame, shot([3840, 2160], 1, { aspect: 2.39, widthPx: 3840, heightPx: 2160 }));
  expect(answer.use).toBeCloseTo(1, 3);
});
