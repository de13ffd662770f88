import { CARRIAGE_LIMITS, carriageClass } from '../../standards/carriageLimits.ts';
import { calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';

export interface Pack {
  wattHours: number;
  flight: 'to 100 Wh' | '100 to 160 Wh' | 'over 160 Wh';
}

/** Energy of a battery pack by its marking, and the carriage class that goes with it. */
export const pack = calculator(
  {
    name: 'power.pack',
    sentence: 'Watt-hours of a battery pack by its marking, and its class for carriage by air.',
    inputs: inputs({ nominalV: positive('V', 'marked voltage'), capacityAh: positive('Ah', 'marked capacity') }),
    results: { wattHours: 'Wh', flight: 'class for carriage by air; airlines may be stricter, damaged packs do not travel' },
    formula: 'Wh = V·Ah; exactly 100 and 160 Wh belong to the lower class',
    source: CARRIAGE_LIMITS[0].source,
    examples: [
      { given: { nominalV: 14.4, capacityAh: 6.8 }, gives: { wattHours: '97.92', flight: 'to 100 Wh' }, source: 'IATA DGR, by the marking' },
      { given: { nominalV: 14.8, capacityAh: 6.8 }, gives: { wattHours: '100.64', flight: '100 to 160 Wh' }, source: 'IATA DGR, by the marking' },
      { given: { nominalV: 14.4, capacityAh: 11.1 }, gives: { wattHours: '159.84', flight: '100 to 160 Wh' }, source: 'IATA DGR, by the marking' },
      { given: { nominalV: 12.5, capacityAh: 8 }, gives: { wattHours: '100', flight: 'to 100 Wh' }, source: 'boundary: 100.00 Wh' },
      { given: { nominalV: 10, capacityAh: 10.001 }, gives: { wattHours: '100.01', flight: '100 to 160 Wh' }, source: 'boundary: 100.01 Wh' },
    ],
  },
  ({ nominalV, capacityAh }): Pack => {
    const wattHours = nominalV * capacityAh;
    return { wattHours, flight: carriageClass(wattHours).name };
  },
);
