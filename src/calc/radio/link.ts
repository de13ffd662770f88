import { calculator } from '../calculator.ts';
import { finite, inputs, nonNegative } from '../inputs.ts';

export interface Link {
  receivedDbm: number;
  marginDb: number;
}

/** What is left of a radio link over the weakest signal its receiver takes. */
export const link = calculator(
  {
    name: 'radio.link',
    sentence: 'Power received over a radio link, and its margin over the weakest signal the receiver takes.',
    inputs: inputs({
      eirpDbm: finite('dBm', 'power radiated, aerial included'),
      receiveGainDbi: finite('dBi', 'gain of the receiving aerial'),
      extraLossDb: nonNegative('dB', 'bodies, walls, cables'),
      pathLossDb: finite('dB', 'loss of the path'),
      sensitivityDbm: finite('dBm', 'weakest signal the receiver takes in this mode'),
    }),
    results: { receivedDbm: 'dBm', marginDb: 'dB; below 0 the link is not there. An estimate: ± 10 dB until walked' },
    formula: 'received = EIRP + gain − extra − path; margin = received − sensitivity',
    source: 'Link budget, as in any handbook of radio',
    examples: [
      {
        given: { eirpDbm: 47, receiveGainDbi: 24, extraLossDb: 0, pathLossDb: 121.69, sensitivityDbm: -72 },
        gives: { receivedDbm: '-50.69', marginDb: '21.31' },
        source: 'published worked case: 23 dBm and two aerials of 24 dBi over 121.69 dB',
      },
    ],
  },
  ({ eirpDbm, receiveGainDbi, extraLossDb, pathLossDb, sensitivityDbm }): Link => {
    const receivedDbm = eirpDbm + receiveGainDbi - extraLossDb - pathLossDb;
    return { receivedDbm, marginDb: receivedDbm - sensitivityDbm };
  },
);
