import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { dc, device, outlet, pack, wiredShoot } from '../../../../test/wiredShoot.ts';
import { change } from './change.ts';

const plate = (hotSwap: boolean) => ({ name: 'Plate', kind: 'battery plate', batteryPlate: { mount: 'wedge', packs: 2, hotSwap }, ports: { a: outlet('pack'), b: outlet('pack') } });
const scene = (hotSwap: boolean, workHours = 10, watts = 40) =>
  wiredShoot({
    parts: { pack: pack(), plate: plate(hotSwap), slow: device('Slow box', { 'dc-in': dc() }, { draw: { typicalW: watts, bootS: 20 } }), motor: { name: 'Motor', kind: 'motor', ports: { 'dc-in': dc() }, motor: { stallTorqueNm: 0.3, noLoadRpm: 190, gear: { module: 0.8, teeth: 40 }, movingW: 7, losesMap: true } } },
    pieces: { plate: { of: 'plate', packs: hotSwap ? ['pack', 'pack'] : ['pack'] }, slow: { of: 'slow' }, motor: { of: 'motor' } }, lines: { a: ['plate/a', 'slow/dc-in'], b: ['plate/b', 'motor/dc-in'] },
  }, (draft) => {
    Object.assign(draft.shots.portrait, { takes: 3, takeMin: 1, resetMin: 2 });
    draft.days.one.workHours = workHours;
    draft.assumptions = { 'power.changeS': 40, 'power.calibrateS': 60 };
  });

test('40 s of hands and 60 s of calibration against 2 min between takes: the slowest counts, not the sum', () => {
  expect(askOne(change, scene(false))).toMatchObject({ verdict: 'good', needs: { amount: { value: 100 } }, has: { amount: { value: 120 } }, says: 'A change on Plate darkens Slow box, Motor, and all are back between takes.' });
});
test('with hot swap nothing goes dark', () => expect(askOne(change, scene(true))).toMatchObject({ verdict: 'good', says: 'Packs on Plate are changed without anything going dark.' }));
test('a pack that lasts the day is not asked', () => expect(askAll(change, scene(false, 1))).toEqual([]));
