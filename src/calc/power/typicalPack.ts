import { CHEMISTRIES, COLD_FACTORS_SOURCE, cellsInSeries, chemistry, coldFactor } from '../../standards/batteryClasses.ts';
import { calculator } from '../calculator.ts';
import { between, inputs, oneOf, positive } from '../inputs.ts';

export interface TypicalPack {
  cells: number;
  openCircuitV: [number, number][];
  capacityAh: number;
  internalOhm: number;
  internalOhmLow: number;
  internalOhmHigh: number;
  cutoffV: number;
}

const NAMES = CHEMISTRIES.map(({ name }) => name) as [string, ...string[]];

/** What a pack of a chemistry is like at a temperature where nothing but its marking is known: an estimate, with wide bounds. */
export const typicalPack = calculator(
  {
    name: 'power.typicalPack',
    sentence: 'Voltage curve, charge, resistance and cut-off of a pack by its marking, chemistry and temperature: a wide estimate.',
    inputs: inputs({
      chemistry: oneOf(NAMES, 'chemistry of the cells'),
      nominalV: positive('V', 'marked voltage'),
      capacityAh: positive('Ah', 'marked capacity'),
      temperatureC: between(-30, 60, '°C', 'temperature of the cells; held at the ends of the table below −20 and above 40'),
    }),
    results: {
      cells: 'count, in series',
      openCircuitV: 'V at rest, with the state of charge each belongs to',
      capacityAh: 'Ah that can be drawn slowly',
      internalOhm: 'ohm, contacts and protection included',
      internalOhmLow: 'ohm, of a good pack',
      internalOhmHigh: 'ohm, of a tired one',
      cutoffV: 'V under load',
    },
    formula: 'cells = V/cell voltage, rounded; curve and cut-off: cells times one cell’s; resistance = cells·(ohm·Ah)/Ah·cold; charge = Ah·cold share',
    source: `standards/batteryClasses: ${COLD_FACTORS_SOURCE}`,
    examples: [
      {
        given: { chemistry: 'lithium-ion', nominalV: 14.4, capacityAh: 6.8, temperatureC: 20 },
        gives: { cells: '4', capacityAh: '6.8', cutoffV: '12' },
        source: 'common practice: four cells in series, 3.0 V a cell',
      },
      { given: { chemistry: 'lithium-ion', nominalV: 14.8, capacityAh: 6.8, temperatureC: 20 }, gives: { cells: '4' }, source: 'common practice' },
      {
        given: { chemistry: 'nickel-metal hydride', nominalV: 13.2, capacityAh: 4, temperatureC: 20 }, gives: { cells: '11' },
        source: '1.2 V a cell (IEC 61951-2)',
      },
    ],
  },
  ({ chemistry: name, nominalV, capacityAh, temperatureC }): TypicalPack => {
    const cell = chemistry(name);
    if (cell === undefined) throw new Error(`no chemistry ${name} in the table`);
    const cells = cellsInSeries(cell, nominalV);
    const cold = coldFactor(temperatureC);
    const ohmWith = (bound: 'value' | 'low' | 'high') => (cells * cell.ohmAh[bound] * cold.resistanceRatio[bound]) / capacityAh;
    return {
      cells,
      openCircuitV: cell.openCircuitV.map(([soc, volts]) => [soc, volts * cells]),
      capacityAh: capacityAh * cold.capacityShare.value,
      internalOhm: ohmWith('value'),
      internalOhmLow: ohmWith('low'),
      internalOhmHigh: ohmWith('high'),
      cutoffV: cell.cutoffV.value * cells,
    };
  },
);
