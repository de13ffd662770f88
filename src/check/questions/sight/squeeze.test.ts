import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { squeeze } from './squeeze.ts';

const set = (to: number | undefined, offered = [1.33, 1.5, 2]) =>
  tinyShoot((draft) => {
    draft.kit.parts['monitor-5'].screen.squeezes = offered;
    if (to === undefined) delete draft.builds.camera.pieces.monitor.squeeze;
    else draft.builds.camera.pieces.monitor.squeeze = to;
  });

test('set to the squeeze of the block', () => expect(askOne(squeeze, set(1.5))).toMatchObject({ verdict: 'good', use: 0 }));
test('not set at all: half too thin, and setting it is the cure', () => {
  const shoot = set(undefined);
  const answer = askOne(squeeze, shoot);
  expect(answer).toMatchObject({ verdict: 'fails', says: '5-inch monitor shows a squeezed picture.', needs: { amount: { value: expect.closeTo(0.5, 9) as number } } });
  const edit = answer.mends?.[0]?.edit;
  const edited = edit === undefined ? undefined : applyEdit(shoot, edit);
  expect(edited?.ok === true && askOne(squeeze, edited.value.shoot).verdict).toBe('good');
});
test('a twentieth is seen (common practice): 1.55 for 1.5 passes, 1.33 does not and nothing nearer is offered', () => {
  expect(askOne(squeeze, set(1.55)).verdict).toBe('good');
  expect(askOne(squeeze, set(1.33, [1.33])).says).toContain('it offers nothing nearer than 1.33×');
});
test('de-squeezed by the camera does not arise here', () => {
  expect(askAll(squeeze, tinyShoot((draft) => { draft.kit.parts.body.body.modes['open-gate'].outputs['sdi-out'].desqueezed = true; }))).toEqual([]);
});
test('two glasses of different squeeze: a step of the swap, not a fault', () => {
  const shoot = tinyShoot((draft) => {
    draft.glasses.plain = { name: 'plain', stack: ['lens'], pieces: { lens: { of: 'taking-58' } } };
    draft.setups.sticks.glasses.push('plain');
  });
  expect(askOne(squeeze, shoot)).toMatchObject({ verdict: 'tight', says: '5-inch monitor must be set anew at some lens swaps: the glasses squeeze 1.5× and 1×.' });
});
