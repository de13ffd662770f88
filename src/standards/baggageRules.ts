/**
 * Baggage on a passenger aircraft: what one piece may weigh and measure, what stays out of the cabin. Every airline has its own
 * allowance; these are the figures most of them keep to. The answer names them and says: ask the airline.
 */
const IATA = 'recommendations of IATA, second-hand';

/** One piece that is checked in. */
export const HOLD_PIECE = {
  /** What most tickets allow. */
  usualG: 23_000,
  /** No heavier piece is taken as baggage, paid for or not: it is lifted by hand. */
  mostG: 32_000,
  /** Length and width and height added up. */
  mostSidesMm: 1580,
  source: `${IATA}: 23 kg usual, 32 kg at most, 158 cm length and width and height together`,
} as const;

/** The largest bag for the cabin, longest edge first. */
export const CABIN_BAG = { edgesMm: [560, 450, 250], source: `${IATA}: 56 × 45 × 25 cm; no weight is recommended, airlines allow 5 to 12 kg` } as const;

/** What security keeps out of the cabin, and what keeps off the aircraft. */
export const BAGGAGE_CAUTIONS = {
  tools: {
    says: 'Keys, drivers, pliers and knives go in the hold: security lists differ (EU: blades and shafts over 6 cm, USA: tools over 7 in, about 18 cm), and the officer decides.',
    source: 'Commission Implementing Regulation (EU) 2015/1998, attachment 4-C, read in a copy; US rules second-hand',
  },
  fluids: {
    says: 'Lens fluid in the cabin only to 100 ml; air dusters, gas and solvents stay at home.',
    source: 'ICAO guidance on liquids, from memory; dangerous goods in baggage: common practice',
  },
  radios: { says: 'Transmitters and anything with a radio are switched off on the aircraft, and cannot switch themselves on in a case.', source: 'common practice' },
  equipment: {
    says: 'Packs are taken off their plates and travel as spares. What has a cell built in travels in the cabin, or switched right off and packed against damage.',
    source: 'IATA guidance on lithium batteries for passengers, second-hand',
  },
  airline: { says: 'Allowances differ by airline, ticket and aircraft: ask before the day, and weigh the cases.', source: 'common practice' },
} as const;
