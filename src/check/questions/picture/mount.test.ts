import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { type Draft, exampleShoot, tinyShoot } from '../../../../test/tinyShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { mount } from './mount.ts';

test('a long lens on a short body without an adapter fails, and the kit’s adapter mends it, joints and all', () => {
  const shoot = exampleShoot('demo', (draft: Draft) => {
    const glass = draft.glasses['set-50'];
    delete glass.pieces['mount-adapter'];
    glass.stack = ['lens'];
    glass.joints = { 'lens-seat': { a: 'body/mount', b: 'lens/mount' } };
  });
  const answer = askOne(mount, shoot, 'setup=jetty-sticks|glass=set-50');
  expect(answer).toMatchObject({ verdict: 'fails', says: '50 mm 2× prime (long 52 mm) does not fit A body (short 18 mm).' });
  const edited = applyEdit(shoot, answer.mends?.[0]?.edit ?? { says: '', patches: [] });
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
  expect(askOne(mount, edited.value.shoot, 'setup=jetty-sticks|glass=set-50').verdict).toBe('good');
  expect(edited.value.shoot.glasses['set-50']?.joints).toEqual({
    'adapter-seat': { a: 'body/mount', b: 'mount-adapter/body' },
    'lens-seat': { a: 'mount-adapter/lens', b: 'lens/mount' },
  });
});

const flange = (body: number, lens: number) => tinyShoot((draft: Draft) => {
  draft.kit.parts.body.body.flangeMm = body;
  draft.kit.parts['taking-58'].lens.flangeMm = lens;
});

test.each([
  [18, 18, 'good', 'fits'],
  [18.02, 18, 'good', 'fits'], // a matter of shims
  [18.5, 18, 'fails', 'will not reach infinity'],
  [17.5, 18, 'fails', 'passes infinity'],
] as const)('flange distances add up or do not: %f on a lens for %f', (body, lens, verdict, says) => {
  expect(askOne(mount, flange(body, lens))).toMatchObject({ verdict, says: expect.stringContaining(says) as string });
});

test('where the kit joins them by nothing, it says why an adapter cannot always exist', () => {
  const answer = askOne(mount, tinyShoot((draft: Draft) => (draft.kit.parts['taking-58'].lens.mount = 'another')));
  expect(answer).toMatchObject({ verdict: 'fails', mends: [] });
  expect(answer.notes?.[0]).toMatch(/needs room/);
});
