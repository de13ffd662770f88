import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { outlet, pack, wiredShoot } from '../../../../test/wiredShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { bays } from './bays.ts';

const scene = (packs: readonly string[], plate: object = {}, more: object = {}) =>
  wiredShoot({ parts: { pack: pack(more), plate: { name: 'Two-bay plate', kind: 'battery plate', batteryPlate: { mount: 'wedge', packs: 2, ...plate }, ports: { tap: outlet('pack') } } }, pieces: { plate: { of: 'plate', packs } } });

test('two packs go on two bays, three do not (common practice)', () => {
  expect(askOne(bays, scene(['pack', 'pack'])).verdict).toBe('good');
  const shoot = scene(['pack', 'pack', 'pack']);
  const answer = askOne(bays, shoot);
  expect(answer).toMatchObject({ verdict: 'fails', says: '3 packs cannot be on Two-bay plate: it has 2 bays.' });
  const edit = answer.mends?.[0]?.edit;
  if (edit === undefined) throw new Error('no mend');
  const edited = applyEdit(shoot, edit);
  expect(edited.ok && askOne(bays, edited.value.shoot).verdict).toBe('good');
});

test('a pack of another mount does not go on', () => expect(askOne(bays, scene(['pack'], {}, { mount: 'wide' }))).toMatchObject({ verdict: 'fails', says: 'Pack has the mount wide; Two-bay plate takes wedge.' }));

test('bays that nobody entered are asked for only where more than one pack is named; an empty plate is not asked about', () => {
  const silent = { packs: undefined };
  expect(askOne(bays, scene(['pack'], silent)).verdict).toBe('good');
  expect(askOne(bays, scene(['pack', 'pack'], silent))).toMatchObject({ unknown: 'not entered', missing: [{ says: 'bays, packs at once of Two-bay plate' }] });
  expect(askAll(bays, scene([]))).toEqual([]);
});
