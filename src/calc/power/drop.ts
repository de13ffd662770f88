import { NoAnswer, calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';

export interface Drop {
  loadV: number;
  currentA: number;
  lossW: number;
}

/** Voltage that reaches a device which draws constant power, as anything with a regulator does: the lower its voltage, the more it draws. */
export const drop = calculator(
  {
    name: 'power.drop',
    sentence: 'Voltage at the end of a cable, current and loss in it, for a load of constant power.',
    inputs: inputs({
      sourceV: positive('V', 'voltage at the source'),
      loadW: nonNegative('W', 'power of the load'),
      loopOhm: nonNegative('ohm', 'resistance there and back, plugs included'),
    }),
    results: { loadV: 'V', currentA: 'A', lossW: 'W, heat in the cable' },
    formula: 'V = (V0 + √(V0² − 4·P·R))/2, the upper root; I = P/V; loss = I²·R. No answer beyond P = V0²/4R',
    source: 'Ohm’s law for a constant-power load',
    examples: [
      { given: { sourceV: 14.4, loadW: 60, loopOhm: 0.125689 }, gives: { currentA: '4.33034', loadV: '13.85572' }, source: 'derived' },
      { given: { sourceV: 14.4, loadW: 0, loopOhm: 0.125689 }, gives: { currentA: '0', loadV: '14.4' }, source: 'no load, no drop' },
    ],
  },
  ({ sourceV, loadW, loopOhm }): Drop => {
    const mostW = sourceV ** 2 / (4 * loopOhm);
    if (loadW > mostW) {
      throw new NoAnswer('loadW', `Found ${loadW} W; through ${loopOhm} ohm a source of ${sourceV} V feeds at most ${mostW.toPrecision(4)} W.`);
    }
    const loadV = (sourceV + Math.sqrt(Math.max(0, sourceV ** 2 - 4 * loadW * loopOhm))) / 2;
    const currentA = loadW / loadV;
    return { loadV, currentA, lossW: currentA ** 2 * loopOhm };
  },
);
