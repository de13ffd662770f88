import { describe, expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { dc, outlet, pack, screen, wiredShoot } from '../../../../test/wiredShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { day } from './day.ts';

/** A pack of 100 Wh at a steady 10 V, so that hours are Wh over W. */
const scene = (count: number, watts: number, more: { mains?: boolean; charger?: boolean; plates?: number } = {}, pieces: Record<string, object> = {}, parts: Record<string, object> = {}) =>
  wiredShoot({
    parts: {
      pack: { ...pack({ nominalV: 10, capacityAh: 10, openCircuit: [[0, 10], [1, 10.0001]], cutoffV: 5, chargeHours: 2, mount: 'wedge' }), count }, plate: { name: 'Plate', kind: 'battery plate', batteryPlate: { mount: 'wedge', packs: 1 }, ports: { tap: outlet('pack') } },
      screen: screen({ 'dc-in': dc({ lowV: 5 }) }, { draw: { typicalW: watts } }), ...(more.charger === true ? { charger: { name: 'Charger', kind: 'charger', charger: { bays: 2, takes: ['wedge'] } } } : {}), ...parts,
    },
    pieces: { ...Object.fromEntries(Array.from({ length: more.plates ?? 1 }, (_, at) => [[`plate-${at}`, { of: 'plate', packs: ['pack'] }], [`screen-${at}`, { of: 'screen' }]] as const).flat()), ...pieces },
    lines: Object.fromEntries(Array.from({ length: more.plates ?? 1 }, (_, at) => [`l-${at}`, [`plate-${at}/tap`, `screen-${at}/dc-in`] as const])),
  }, (draft) => {
    draft.days.one = { name: 'Day one', temperatureC: 20, workHours: 8, ...(more.mains === undefined ? {} : { mains: more.mains }) };
    Object.assign(draft.shots.portrait, { takes: 12, takeMin: 2, resetMin: 8 });
    draft.assumptions = { 'power.contactOhm': 0, 'power.unfoundCableMm': 1, 'power.changeS': 0 };
  });

describe('100 Wh at 50 W last 2 h', () => {
  test('five of them last an 8 h day, with three changes and 2 h over', () => expect(askOne(day, scene(5, 50))).toMatchObject({ verdict: 'good', needs: { amount: { value: expect.closeTo(8, 2) as number } }, has: { amount: { value: expect.closeTo(10, 1) as number } } }));
  test('three do not: nearly 2 h without power, and one more is a cure', () => {
    const answer = askOne(day, scene(3, 49));
    expect(answer).toMatchObject({ verdict: 'fails', has: { amount: { value: expect.closeTo(300 / 49, 1) as number } } });
    expect(answer.mends?.map(({ says }) => says)).toEqual(['1 more of Pack']);
  });
  test('with mains and a charger three do; the cure says so, and applies', () => {
    const shoot = scene(3, 50, { charger: true });
    const mend = askOne(day, shoot).mends?.[0];
    expect(mend?.says).toBe('mains for the chargers all day');
    const edited = mend?.edit === undefined ? undefined : applyEdit(shoot, mend.edit);
    expect(edited?.ok === true && askOne(day, edited.value.shoot).verdict).toBe('good');
  });
  test('two plates at once share the packs; one pack cannot be on both', () => {
    expect(askOne(day, scene(9, 49, { plates: 2 }))).toMatchObject({ verdict: 'good', needs: { amount: { value: expect.closeTo(16, 2) as number } } });
    expect(askOne(day, scene(1, 50, { plates: 2 }))).toMatchObject({ verdict: 'fails', says: '2 places want a Pack at once; there is one.' });
  });
  test('a pack goes from a place that can spare it to one that is dark: 90 W take eight for 8 h, 5 W one', () => {
    const both = (count: number) => askOne(day, scene(count, 5, { plates: 2 }, { 'screen-0': { of: 'hungry' } }, { hungry: { ...screen({ 'dc-in': dc({ lowV: 5 }) }, { draw: { typicalW: 90 } }), name: 'Hungry screen' } }));
    expect([8, 9].map((count) => both(count).verdict)).toEqual(['fails', 'good']);
  });
  test('what a thrifty place has left does not light the hungry one: 90 W go dark after 100/90 h, whatever 5 W leave over', () => {
    const shoot = scene(2, 5, { plates: 2 }, { 'screen-0': { of: 'hungry' } }, { hungry: { ...screen({ 'dc-in': dc({ lowV: 5 }) }, { draw: { typicalW: 90 } }), name: 'Hungry screen' } });
    expect(askOne(day, shoot)).toMatchObject({ verdict: 'fails', has: { amount: { value: expect.closeTo(16 - (8 - 100 / 90), 1) as number } } });
  });
  test('the timeline names the shot', () => expect(askOne(day, scene(5, 50)).steps?.[0]?.says).toMatch(/^after 1\.9\d?\s*h, Portrait at the window: a pack is changed on Plate|^after 2\s*h/u));
});
