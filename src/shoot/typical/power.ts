import type { Port } from '../schema/electrics.ts';
import { type TypicalRoom, roomOf } from './typicalPart.ts';

/** Id, name, volts, ampere-hours, internal resistance, highest current, mass. */
const PACKS = [
  ['pack-14v-98', '14.4 V pack, 98 Wh', 14.4, 6.8, 0.09, 10, 700], ['pack-14v-147', '14.4 V pack, 147 Wh', 14.4, 10.2, 0.07, 14, 980], ['pack-14v-190', '14.4 V pack, 190 Wh', 14.4, 13.2, 0.06, 16, 1250],
  ['pack-26v-98', '25.9 V pack, 98 Wh', 25.9, 3.8, 0.14, 12, 760], ['pack-26v-150', '25.9 V pack, 150 Wh', 25.9, 5.8, 0.11, 14, 1080],
  ['pack-7v-16', '7.2 V pack, 16 Wh', 7.2, 2.2, 0.2, 2.5, 110], ['pack-7v-32', '7.2 V pack, 32 Wh', 7.2, 4.4, 0.15, 3, 210], ['pack-7v-48', '7.2 V pack, 48 Wh', 7.2, 6.6, 0.12, 4, 310],
] as const;
/** State of charge and volts at rest of one lithium-ion cell: an estimate of the common shape. */
const CELL = [[0, 3], [0.05, 3.3], [0.2, 3.5], [0.4, 3.63], [0.6, 3.76], [0.8, 3.93], [1, 4.15]] as const;

const packs = roomOf(PACKS, ([id, name, nominalV, capacityAh, internalOhm, maxA, massG]) => {
  const cells = Math.round(nominalV / 3.65);
  const tap: Port = { kind: 'power', way: 'out', connector: '2-pin tap', sex: 'female', power: { from: 'pack', lowV: cells * 3, highV: cells * 4.2, maxA: Math.min(maxA, 8) } };
  return [
    id,
    {
      name, kind: 'battery', massG,
      pack: {
        chemistry: 'lithium ion', nominalV, capacityAh, internalOhm, maxA, cutoffV: cells * 3, coldOhmRatio: 2.3, coldCapacityShare: 0.84, chargeHours: 4,
        openCircuit: CELL.map(([charge, volts]): [number, number] => [charge, volts * cells]),
      },
      ports: nominalV > 20 ? {} : nominalV > 10 ? { 'tap-1': tap, 'tap-2': tap } : { out: { ...tap, connector: 'barrel 5.5×2.1', sex: 'male', power: { ...tap.power, polarity: 'centre plus' } } },
    },
  ];
});

const out = (connector: string, maxA: number, from: string, more: object = {}): Port => ({ kind: 'power', way: 'out', connector, sex: connector.startsWith('barrel') ? 'male' : 'female', power: { from, maxA, ...more } });

export const power: TypicalRoom = {
  ...packs,
  'power-bank': {
    name: 'USB power bank, 74 Wh', kind: 'battery', massG: 430,
    pack: { chemistry: 'lithium ion', nominalV: 3.7, capacityAh: 20, internalOhm: 0.02, maxA: 12, cutoffV: 3, outlets: true, openCircuit: CELL.map(([charge, volts]): [number, number] => [charge, volts]) },
    ports: { usb: out('USB C', 3, 'pack', { outputV: 5, efficiency: 0.88, profile: 'USB 5 V 3 A' }) },
  },
  'plate-hot-swap': { name: 'Hot-swap plate', kind: 'battery plate', massG: 420, batteryPlate: { mount: 'wedge plate', packs: 2, hotSwap: true }, ports: { 'tap-1': out('2-pin tap', 8, 'pack'), 'tap-2': out('2-pin tap', 8, 'pack'), 'tap-3': out('2-pin tap', 8, 'pack'), body: out('XLR 4', 12, 'pack') } },
  'plate-single': { name: 'Battery plate', kind: 'battery plate', massG: 190, batteryPlate: { mount: 'wedge plate', packs: 1, hotSwap: false }, ports: { 'tap-1': out('2-pin tap', 5, 'pack'), 'tap-2': out('2-pin tap', 5, 'pack') } },
  // Common practice: the taps of a plate for 26 V packs are brought down to what 14 V devices take.
  'plate-26v': {
    name: 'Plate for 26 V packs, taps at 14 V', kind: 'battery plate', massG: 460, batteryPlate: { mount: 'wedge plate, 26 V', packs: 2, hotSwap: true },
    ports: { ...Object.fromEntries([1, 2, 3].map((tap) => [`tap-${tap}`, out('2-pin tap', 8, 'pack', { outputV: 14.4, efficiency: 0.92 })])), body: out('XLR 4', 12, 'pack', { outputV: 14.4, efficiency: 0.92 }) },
  },
  'plate-small': { name: 'Plate for small packs', kind: 'battery plate', massG: 90, batteryPlate: { mount: 'small pack shoe', packs: 1, hotSwap: false }, ports: { barrel: out('barrel 5.5×2.1', 3, 'pack', { polarity: 'centre plus' }) } },
  'regulator-8v': { name: 'Regulator to 8 V', kind: 'regulator', massG: 70, ports: { in: { kind: 'power', way: 'in', connector: '2-pin tap', sex: 'male', power: { lowV: 10, highV: 26, maxA: 3 } }, out: out('barrel 5.5×2.1', 3, 'in', { outputV: 8, efficiency: 0.9, polarity: 'centre plus' }) } },
  'regulator-5v': { name: 'Regulator to USB 5 V', kind: 'regulator', massG: 50, ports: { in: { kind: 'power', way: 'in', connector: '2-pin tap', sex: 'male', power: { lowV: 10, highV: 26, maxA: 2 } }, out: out('USB C', 3, 'in', { outputV: 5, efficiency: 0.88 }) } },
  'tap-splitter': {
    name: 'Tap splitter, three ways', kind: 'splitter', massG: 60,
    ports: { in: { kind: 'power', way: 'in', connector: '2-pin tap', sex: 'male', power: { lowV: 6, highV: 30, maxA: 8 } }, a: out('2-pin tap', 5, 'in'), b: out('2-pin tap', 5, 'in'), c: out('2-pin tap', 5, 'in') },
  },
  'charger-2': { name: 'Two-bay charger', kind: 'charger', massG: 900, charger: { bays: 2, takes: ['wedge plate'], hoursEach: 3.5 } },
  'charger-4': { name: 'Four-bay charger', kind: 'charger', massG: 1900, charger: { bays: 4, takes: ['wedge plate'], hoursEach: 4 } },
};
