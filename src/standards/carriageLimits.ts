/** Spare lithium packs on a passenger aircraft. Airlines may be stricter; damaged packs do not travel. */
export interface CarriageLimit {
  readonly name: 'to 100 Wh' | '100 to 160 Wh' | 'over 160 Wh';
  /** The most in this class, itself included. */
  readonly maxWh: number;
  /** Spares a person may carry; 0: none in the cabin. */
  readonly spares: number;
  readonly approval: boolean;
  readonly says: string;
  readonly source: string;
}

const SOURCE = 'IATA Dangerous Goods Regulations, 67th edition, 2026 (second-hand)';

export const CARRIAGE_LIMITS = [
  {
    name: 'to 100 Wh', maxWh: 100, spares: 20, approval: false,
    says: 'In the cabin only, terminals covered, up to 20 spares a person.', source: SOURCE,
  },
  {
    name: '100 to 160 Wh', maxWh: 160, spares: 2, approval: true,
    says: 'In the cabin only, terminals covered, 2 spares a person, with the approval of the airline.', source: SOURCE,
  },
  { name: 'over 160 Wh', maxWh: Infinity, spares: 0, approval: false, says: 'Not with a passenger: as declared cargo only.', source: SOURCE },
] as const satisfies readonly CarriageLimit[];

/** Where the rules are open, to warn rather than decide. */
export const CARRIAGE_OPEN = {
  powerBanks: {
    mostEach: 2, since: '2026-03',
    says: 'Power banks count apart, 2 a person; whether a pack with outlets of its own is one is open. Ask the airline.',
    source: SOURCE,
  },
} as const;

export const CARRIAGE_EDITION = SOURCE;

/** The class of a pack by its energy: exactly 100 Wh is in the lower one. A hair over counts as on the line: products are not exact in binary. */
export function carriageClass(wattHours: number): (typeof CARRIAGE_LIMITS)[number] {
  const [small, middle, large] = CARRIAGE_LIMITS;
  const onLine = 1 + 1e-9;
  return wattHours <= small.maxWh * onLine ? small : wattHours <= middle.maxWh * onLine ? middle : large;
}
