import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';
import { curveInput } from './curveInput.ts';
import { runFrom, sortedCurve } from './discharge.ts';

export interface Runtime {
  hours: number;
  endSoc: number;
}

/** How long a full pack feeds a constant power. */
export const runtime = calculator(
  {
    name: 'power.runtime',
    sentence: 'Hours a full pack feeds a load of constant power until cut-off under load, and the charge left then.',
    inputs: inputs({
      openCircuitV: curveInput,
      capacityAh: positive('Ah', 'charge from full to empty at the temperature of the day'),
      internalOhm: nonNegative('ohm', 'resistance of the pack, leads included, at the temperature of the day'),
      loadW: nonNegative('W', 'power drawn'),
      cutoffV: nonNegative('V', 'loaded voltage at which the pack or the device shuts off'),
    }),
    results: {
      hours: 'h; 0 where a full pack cannot feed the load above cut-off; null: no load, for ever',
      endSoc: 'state of charge when it ends',
    },
    formula: 'I = (V − √(V² − 4·P·R))/(2·R); hours = Ah·∫ dsoc/I, from soc 1 to V = Vc + P·R/Vc, V = 2·√(P·R) or soc 0',
    source: 'Constant power from an open-circuit voltage behind a resistance; integrated in closed form between the points',
    examples: [
      {
        given: { openCircuitV: [[0, 14.4], [1, 14.4]], capacityAh: 6.8, internalOhm: 0, loadW: 48.96, cutoffV: 12 },
        gives: { hours: '2.000', endSoc: '0' },
        source: 'derived: 97.92 Wh at 48.96 W',
      },
      {
        given: { openCircuitV: [[0, 14.4], [1, 14.4]], capacityAh: 4.33034, internalOhm: 0.125689, loadW: 60, cutoffV: 12 },
        gives: { hours: '1.0000', endSoc: '0' },
        source: 'derived: 14.4 V, 60 W and 0.125689 ohm draw 4.33034 A',
      },
      {
        given: { openCircuitV: [[0, 12], [1, 16]], capacityAh: 7, internalOhm: 0, loadW: 49, cutoffV: 14 },
        gives: { hours: '1.0714', endSoc: '0.5' },
        source: 'derived: 3.5 Ah at 15 V on average, 52.5 Wh, at 49 W',
      },
    ],
  },
  ({ openCircuitV, loadW, ...rest }): Runtime => {
    const { hours, endSoc } = runFrom({ ...rest, openCircuitV: sortedCurve(openCircuitV, 'openCircuitV') }, { soc: 1, loadW });
    return { hours, endSoc };
  },
);
