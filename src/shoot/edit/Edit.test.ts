import { expect, test } from 'vitest';
import { tinyShoot } from '../../../test/tinyShoot.ts';
import { applyEdit } from './Edit.ts';
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
