import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { coax, screen, sdi, wiredShoot } from '../../../../test/wiredShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { live } from './live.ts';

const scene = (outputs: object) =>
  wiredShoot({ parts: { screen: screen({ 'sdi-in': sdi('in') }), coax: coax(500) }, pieces: { screen: { of: 'screen' } }, lines: { a: ['body/sdi-out', 'screen/sdi-in', 'coax'] } }, (draft) => {
    draft.kit.parts.body.ports['sdi-2'] = sdi('out');
    draft.kit.parts.body.body.modes['open-gate'].outputs = outputs;
  });
const on = { live: true, widthPx: 1920, heightPx: 1080 };

test('the second output is dead in the mode they shoot; the other is the cure, and applies', () => {
  const shoot = scene({ 'sdi-out': { live: false }, 'sdi-2': on });
  const answer = askOne(live, shoot);
  expect(answer).toMatchObject({ verdict: 'fails', says: 'The sdi out of Body is dead in open gate 3:2.', steps: [{ says: 'without it these stay dark: Screen' }] });
  const edit = answer.mends?.[0]?.edit;
  const edited = edit === undefined ? undefined : applyEdit(shoot, edit);
  expect(edited?.ok === true && askOne(live, edited.value.shoot).verdict).toBe('good');
});

test('what an output does in a mode is asked for where it is not entered', () => {
  expect(askOne(live, scene({ 'sdi-2': on }))).toMatchObject({ verdict: 'unknown', unknown: 'not entered' });
});
