import { describe, expect, test } from 'vitest';
import { type Scene, dc, device, outlet, pack, screen, wiredShoot } from '../../../test/wiredShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { powerFlow } from './powerFlow.ts';
import { type PowerTrace, powerTrace } from './powerTrace.ts';

const trace = (scene: Scene, change?: Parameters<typeof wiredShoot>[1]): PowerTrace => powerTrace(new Ledger(wiredShoot(scene, change)), 'sticks', 'normal');
const names = (pieces: readonly { id: string }[]) => pieces.map(({ id }) => id);
const splitter = device('Splitter', { in: dc(), a: outlet('in'), b: outlet('in') });
const regulator = device('Regulator', { in: dc({ lowV: 10 }), out: outlet('in', { outputV: 8, efficiency: 0.9 }) });

describe('who feeds whom', () => {
  test('pack to splitter to regulator to screen; what nothing reaches is unfed', () => {
    const { supplies, unfed } = trace({
      parts: { pack: pack(), splitter, regulator, screen: screen({ 'dc-in': dc() }) },
      pieces: { pack: { of: 'pack' }, splitter: { of: 'splitter' }, regulator: { of: 'regulator' }, near: { of: 'screen' }, far: { of: 'screen' }, dark: { of: 'screen' } },
      lines: { a: ['pack/tap-1', 'splitter/in'], b: ['splitter/a', 'near/dc-in'], c: ['splitter/b', 'regulator/in'], d: ['regulator/out', 'far/dc-in'] },
    });
    const [supply] = supplies;
    expect(supply?.nodes.map(({ piece, parent, regulated }) => [piece.id, parent, regulated?.volts])).toEqual([['splitter', -1, undefined], ['near', 0, undefined], ['regulator', 0, undefined], ['far', 2, 8]]);
    expect(names(unfed)).toEqual(['body', 'dark']);
    // 13 W at 8 V behind 90 % draw 14.4 W and the rest in copper: less than 14.7 W together with the near 13 W.
    const { sourceA } = powerFlow(supply?.nodes ?? [], { sourceV: 14.4, load: 'typicalW' });
    expect(sourceA * 14.4).toBeGreaterThan(13 + 13 / 0.9);
    expect(sourceA * 14.4).toBeLessThan((13 + 13 / 0.9) * 1.03);
  });

  test('packs on a plate feed it; a device with a pack of its own uses that only where no cable feeds it', () => {
    const own = screen({ 'dc-in': dc() }, { pack: { nominalV: 7.2, capacityAh: 6.6 } });
    const plate = { name: 'Plate', kind: 'battery plate', batteryPlate: { mount: 'wedge', packs: 2, hotSwap: true }, ports: { tap: outlet('pack') } };
    const scene = (lines: Scene['lines'] & object): Scene => ({ parts: { pack: pack(), plate, own }, pieces: { plate: { of: 'plate', packs: ['pack', 'pack'] }, own: { of: 'own' } }, lines });
    const [fedByCable, alone] = [trace(scene({ a: ['plate/tap', 'own/dc-in'] })), trace(scene({}))];
    expect(fedByCable.supplies.map(({ piece, hotSwap, packs, nodes }) => [piece.id, hotSwap, packs.length, names(nodes.map((node) => node.piece))])).toEqual([['plate', true, 2, ['own']]]);
    expect(alone.supplies.filter(({ nodes }) => nodes.length > 0).map(({ piece }) => piece.id)).toEqual(['own']);
    expect(names(alone.unfed)).toEqual(['body']);
  });

  test('a negotiated supply settles on the highest fixed voltage the device takes: 27 W gives 5 and 9 V, no 12 V (IEC 62680-1-2)', () => {
    const bank = pack({}, { usb: { ...outlet('pack'), power: { from: 'pack', profile: 'USB PD 27 W' } } });
    const volts = (lowV: number, highV: number) =>
      trace({ parts: { bank, screen: screen({ 'dc-in': dc({ lowV, highV }) }) }, pieces: { bank: { of: 'bank' }, screen: { of: 'screen' } }, lines: { a: ['bank/usb', 'screen/dc-in'] } }).supplies[0]?.nodes[0]?.regulated?.volts;
    expect([volts(5, 20), volts(4.5, 6), volts(8, 12)]).toEqual([9, 5, 9]);
  });

  test('circles and second feeds are answers', () => {
    const circle = trace({ parts: { splitter, screen: screen({ 'dc-in': dc() }) }, pieces: { a: { of: 'splitter' }, b: { of: 'splitter' }, screen: { of: 'screen' } }, lines: { ab: ['a/a', 'b/in'], ba: ['b/a', 'a/in'], s: ['b/b', 'screen/dc-in'] } });
    expect(names(circle.unfed)).toContain('screen');
    const twice = trace({ parts: { pack: pack(), screen: screen({ 'dc-in': dc() }) }, pieces: { one: { of: 'pack' }, two: { of: 'pack' }, screen: { of: 'screen' } }, lines: { a: ['one/tap-1', 'screen/dc-in'], b: ['two/tap-1', 'screen/dc-in'] } });
    expect(twice.second.map(({ key }) => key)).toEqual(['camera/b']);
  });

  test('ten thousand sockets in one chain are traced and solved', () => {
    const boxes = Array.from({ length: 5000 }, (_, at) => `box-${at}`);
    const shoot = wiredShoot({
      parts: { pack: pack(), box: device('Box', { in: dc(), out: outlet('in') }) }, pieces: { pack: { of: 'pack' }, ...Object.fromEntries(boxes.map((name) => [name, { of: 'box' }])) },
      lines: Object.fromEntries(boxes.map((name, at) => [`l-${at}`, [at === 0 ? 'pack/tap-1' : `box-${at - 1}/out`, `${name}/in`] as const])),
    });
    const { supplies } = powerTrace(new Ledger(shoot), 'sticks', 'normal');
    powerFlow(supplies[0]?.nodes ?? [], { sourceV: 14.4, load: 'typicalW' });
    expect(supplies[0]?.nodes).toHaveLength(5000);
  }, 60_000);
});
