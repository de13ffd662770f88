import { calculator } from '../calculator.ts';
import { finite, inputs, nonNegative, positive } from '../inputs.ts';
import { SPEED_OF_LIGHT_MPS } from './speedOfLight.ts';

export interface Reach {
  reachM: number;
}

/** Distance at which the margin of a link is spent. */
export const reach = calculator(
  {
    name: 'radio.reach',
    sentence: 'Distance at which a radio link has no more than the wanted margin left.',
    inputs: inputs({
      frequencyMHz: positive('MHz', 'frequency'),
      eirpDbm: finite('dBm', 'power radiated, aerial included'),
      receiveGainDbi: finite('dBi', 'gain of the receiving aerial'),
      extraLossDb: nonNegative('dB', 'bodies, walls, cables'),
      sensitivityDbm: finite('dBm', 'weakest signal the receiver takes in this mode'),
      wantedMarginDb: nonNegative('dB', 'margin to keep'),
      lossCoefficient: positive('ratio', 'loss in dB for ten times the distance beyond the first metre; 20 in free space'),
    }),
    results: { reachM: 'm' },
    formula: 'd = 10^((EIRP + gain − extra − sensitivity − margin − L1)/N), L1 = 20·log10(4π·f/c), the free-space loss of the first metre',
    source: 'ITU-R P.525 for the first metre; from there N dB for ten times the distance, as in P.1238',
    examples: [
      {
        given: { frequencyMHz: 5180, eirpDbm: 20, receiveGainDbi: 0, extraLossDb: 0, sensitivityDbm: -66.734, wantedMarginDb: 0,
          lossCoefficient: 20 },
        gives: { reachM: '100.0' },
        source: 'ITU-R P.525: 86.734 dB at 100 m',
      },
    ],
  },
  ({ frequencyMHz, eirpDbm, receiveGainDbi, extraLossDb, sensitivityDbm, wantedMarginDb, lossCoefficient }): Reach => {
    const firstMetreDb = 20 * Math.log10((4 * Math.PI * frequencyMHz * 1e6) / SPEED_OF_LIGHT_MPS);
    const spareDb = eirpDbm + receiveGainDbi - extraLossDb - sensitivityDbm - wantedMarginDb - firstMetreDb;
    return { reachM: 10 ** (spareDb / lossCoefficient) };
  },
);
