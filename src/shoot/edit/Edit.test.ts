import { expect, test } from 'vitest';
import { tinyShoot } from '../../../test/tinyShoot.ts';
import { applyEdit } from './Edit.ts';
import { newShoot } from '../new/newShoot.ts';
import type { Part } from '../schema/part.ts';
import type { Shoot } from '../schema/shoot.ts';
import { typicalPart } from '../typical/typicalParts.ts';
import { replacePart } from './replacePart.ts';

const shoot = tinyShoot((draft) => {
  draft.kit.copies = { 'focuser-1': { of: 'focuser', figures: { 'focus/ringTorqueNm': 0.2 } } };
});

test('an edit shares what it does not touch, and its inverse gives the shoot back', () => {
  const edit = { says: 'stiffer', patches: [{ op: 'replace', path: 'kit/parts/focuser/focus/ringTorqueNm', value: 0.3 }, { op: 'remove', path: 'days/one' }, { op: 'remove', path: 'shots/portrait/day' }] } as const;
  const there = applyEdit(shoot, edit);
  if (!there.ok) throw new Error(JSON.stringify(there.faults));
  expect(there.value.shoot.kit.parts['body']).toBe(shoot.kit.parts['body']);
  const back = applyEdit(there.value.shoot, there.value.inverse);
  expect(back.ok && back.value.shoot).toEqual(shoot);
});

test('a copy’s own figure, keyed by its path, is one place', () => {
  const edited = applyEdit(shoot, { says: 'measured', patches: [{ op: 'replace', path: 'kit/copies/focuser-1/figures/focus/ringTorqueNm', value: { value: 0.25, basis: 'measured' } }] });
  expect(edited.ok && edited.value.shoot.kit.copies?.['focuser-1']?.figures).toEqual({ 'focus/ringTorqueNm': { value: 0.25, basis: 'measured' } });
});

test('an edit that would break the shoot is refused and changes nothing', () => {
  expect(applyEdit(shoot, { says: 'lose the body', patches: [{ op: 'remove', path: 'kit/parts/body' }] })).toMatchObject({ ok: false, faults: [{ path: 'builds/camera/pieces/body/of' }] });
  expect(applyEdit(shoot, { says: 'nowhere', patches: [{ op: 'replace', path: 'kit/parts/ghost/massG', value: 1 }] })).toMatchObject({ ok: false, faults: [{ path: 'kit/parts/ghost/massG' }] });
  for (const path of ['kit/parts/body/__proto__/massG', 'kit/parts/constructor/massG', 'kit/__proto__', 'toString/x']) {
    expect(applyEdit(shoot, { says: 'where only JavaScript goes', patches: [{ op: 'add', path, value: 1 }] }), path).toMatchObject({ ok: false, faults: [{ path }] });
  }
  expect(shoot.kit.parts['body']).toBeDefined();
});

test('a replaced part keeps the lines that fit, lists what broke, and the old build stays', () => {
  const withOther = tinyShoot((draft) => {
    const ports = structuredClone(draft.kit.parts['monitor-5'].ports);
    ports['picture-in'] = ports['sdi-in'];
    delete ports['sdi-in'];
    delete ports['dc-in'];
    draft.kit.parts.other = { ...draft.kit.parts['monitor-5'], name: 'Another monitor', ports };
  });
  const { edit, broke } = replacePart(withOther, 'monitor-5', 'other');
  const next = applyEdit(withOther, edit);
  if (!next.ok) throw new Error(JSON.stringify(next.faults));
  const { builds } = next.value.shoot;
  expect(builds['camera']?.pieces['monitor']?.of).toBe('other');
  expect(builds['camera']?.lines?.['picture']?.to).toBe('monitor/picture-in');
  expect(builds['camera']?.lines).not.toHaveProperty('power-monitor');
  expect(broke).toMatchObject([{ path: 'builds/camera/lines/power-monitor' }]);
  expect(builds['camera-before']).toEqual({ ...withOther.builds['camera'], name: 'Camera on sticks, before' });
});

test('a replaced piece of the glass carries its joints along', () => {
  const withOther = tinyShoot((draft) => {
    draft.kit.parts['taking-85'] = { ...structuredClone(draft.kit.parts['taking-58']), name: '85 mm taking lens' };
  });
  const { edit, broke } = replacePart(withOther, 'taking-58', 'taking-85');
  const next = applyEdit(withOther, edit);
  expect(broke).toEqual([]);
  expect(next.ok && next.value.shoot.glasses['normal']?.joints).toEqual(withOther.glasses['normal']?.joints);
});

test('a glass called after its lens takes the new name, and the one kept keeps the old', () => {
  const named = tinyShoot((draft) => {
    draft.kit.parts['taking-85'] = { ...structuredClone(draft.kit.parts['taking-58']), name: '85 mm taking lens' };
    draft.glasses.normal.name = `Block + ${draft.kit.parts['taking-58'].name}`;
  });
  const next = applyEdit(named, replacePart(named, 'taking-58', 'taking-85').edit);
  const names = next.ok ? Object.values(next.value.shoot.glasses).map(({ name }) => name) : [];
  expect(names).toEqual(['Block + 85 mm taking lens', `${named.glasses['normal']?.name ?? ''}, before`]);
});

const firstShoot = (): Shoot =>
  newShoot({
    title: 'Two', body: 'body-full-frame', mode: 'open-gate', aspect: 2, widthPx: 3840, lens: 'lens-50', block: 'none', focuser: 'none', distanceMm: 2000, tStop: 2.8,
    place: 'interior', operator: 'monitor-5-bright', puller: 'none', director: 'none', link: 'cable', motor: 'none', pack: 'pack-14v-98', packs: 2,
  });
const inStock = (shoot: Shoot, id: string): Shoot => ({ ...shoot, kit: { ...shoot.kit, parts: { ...shoot.kit.parts, [id]: typicalPart(id) as Part } } });

test('a body without the mode in use brings its first one, and says so', () => {
  const start = inStock(firstShoot(), 'body-super-35');
  const { edit, broke } = replacePart(start, 'body-full-frame', 'body-super-35');
  const next = applyEdit(start, edit);
  expect(next.ok && next.value.shoot.setups['first']?.mode).toBe('full');
  expect(broke).toMatchObject([{ path: 'setups/first/mode' }]);
});

test('what an earlier replacement kept stays as it was through the next', () => {
  const start = inStock(inStock(firstShoot(), 'monitor-7'), 'pack-14v-147');
  const once = applyEdit(start, replacePart(start, 'monitor-5-bright', 'monitor-7').edit);
  const twice = once.ok ? applyEdit(once.value.shoot, replacePart(once.value.shoot, 'pack-14v-98', 'pack-14v-147').edit) : once;
  expect(twice.ok && Object.keys(twice.value.shoot.builds)).toEqual(['camera', 'camera-before', 'camera-before-2']);
  expect(twice.ok && once.ok && twice.value.shoot.builds['camera-before']).toBe(once.ok && once.value.shoot.builds['camera-before']);
});

test('packs on a plate and cables of lines are replaced too', () => {
  const start = firstShoot();
  const kit = { ...start.kit, parts: { ...start.kit.parts, large: { ...start.kit.parts['pack-14v-98'], name: 'Large pack' } as Part, long: { ...start.kit.parts['tap-0-4'], name: 'Long lead' } as Part } };
  const stocked = { ...start, kit };
  const packs = applyEdit(stocked, replacePart(stocked, 'pack-14v-98', 'large').edit);
  expect(packs.ok && packs.value.shoot.builds['camera']?.pieces['plate']?.packs).toEqual(['large']);
  const leads = applyEdit(stocked, replacePart(stocked, 'tap-0-4', 'long').edit);
  expect(leads.ok && Object.values(leads.value.shoot.builds['camera']?.lines ?? {}).map(({ cable }) => cable)).toEqual(expect.arrayContaining(['long']));
});
