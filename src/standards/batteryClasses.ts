/** Battery chemistries: one cell's voltage at rest by its state of charge, generic, and what cold does to it. All estimates. */
export interface Chemistry {
  readonly name: 'lithium-ion' | 'lithium iron phosphate' | 'nickel-metal hydride' | 'lead-acid';
  /** Voltages that makers mark a cell with. */
  readonly markedV: readonly [low: number, high: number];
  /** State of charge and volts at rest, 20 °C. */
  readonly openCircuitV: readonly (readonly [soc: number, volts: number])[];
  /** How far a cell may differ from the curve. */
  readonly plusMinusV: number;
  /** Where a pack's own protection, or good care, ends the discharge, a cell under load. */
  readonly cutoffV: { readonly value: number; readonly low: number; readonly high: number };
  /** Resistance of a cell times its capacity: 0.2 ohm·Ah is 67 milliohm for 3 Ah. Contacts and protection included. */
  readonly ohmAh: { readonly value: number; readonly low: number; readonly high: number };
  readonly source: string;
}

export const CHEMISTRIES: readonly Chemistry[] = [
  {
    name: 'lithium-ion', markedV: [3.6, 3.7], plusMinusV: 0.1,
    openCircuitV: [
      [0, 3.0], [0.05, 3.42], [0.1, 3.54], [0.2, 3.62], [0.3, 3.66], [0.4, 3.7], [0.5, 3.75], [0.6, 3.82], [0.7, 3.9], [0.8, 3.98], [0.9, 4.07],
      [1, 4.2],
    ],
    cutoffV: { value: 3.0, low: 2.8, high: 3.3 }, ohmAh: { value: 0.2, low: 0.1, high: 0.4 },
    source: 'estimate of common practice: cells of layered oxides, 3.0 to 4.2 V',
  },
  {
    name: 'lithium iron phosphate', markedV: [3.2, 3.3], plusMinusV: 0.08,
    openCircuitV: [[0, 2.6], [0.05, 3.05], [0.1, 3.18], [0.2, 3.24], [0.3, 3.27], [0.5, 3.29], [0.7, 3.32], [0.9, 3.33], [0.95, 3.35], [1, 3.45]],
    cutoffV: { value: 2.5, low: 2.3, high: 2.8 }, ohmAh: { value: 0.15, low: 0.08, high: 0.3 },
    source: 'estimate of common practice: a plateau at 3.3 V',
  },
  {
    name: 'nickel-metal hydride', markedV: [1.2, 1.2], plusMinusV: 0.06,
    openCircuitV: [[0, 1.05], [0.1, 1.21], [0.2, 1.24], [0.5, 1.28], [0.8, 1.31], [0.9, 1.34], [1, 1.4]],
    cutoffV: { value: 1.0, low: 0.9, high: 1.1 }, ohmAh: { value: 0.06, low: 0.03, high: 0.15 },
    source: 'estimate of common practice; marking IEC 61951-2',
  },
  {
    name: 'lead-acid', markedV: [2, 2], plusMinusV: 0.05,
    openCircuitV: [[0, 1.93], [0.25, 1.99], [0.5, 2.04], [0.75, 2.09], [1, 2.13]],
    cutoffV: { value: 1.75, low: 1.7, high: 1.85 }, ohmAh: { value: 0.04, low: 0.02, high: 0.1 },
    source: 'estimate of common practice',
  },
];

/** What cold does: wide estimates of common practice, to be replaced by a pack's own figures. Charging is for above 0 °C only. */
export interface ColdFactor {
  readonly temperatureC: number;
  /** Resistance against that at 20 °C. */
  readonly resistanceRatio: { readonly value: number; readonly low: number; readonly high: number };
  /** Charge that can be drawn, against that at 20 °C, when drawn slowly. */
  readonly capacityShare: { readonly value: number; readonly low: number; readonly high: number };
}

/** From the coldest on. Cold raises resistance far more than it cuts charge. */
export const COLD_FACTORS: readonly ColdFactor[] = [
  { temperatureC: -20, resistanceRatio: { value: 5, low: 2.5, high: 10 }, capacityShare: { value: 0.75, low: 0.5, high: 0.9 } },
  { temperatureC: -10, resistanceRatio: { value: 3.2, low: 1.8, high: 5 }, capacityShare: { value: 0.85, low: 0.65, high: 0.95 } },
  { temperatureC: 0, resistanceRatio: { value: 2, low: 1.4, high: 3 }, capacityShare: { value: 0.92, low: 0.8, high: 0.98 } },
  { temperatureC: 10, resistanceRatio: { value: 1.35, low: 1.1, high: 1.7 }, capacityShare: { value: 0.97, low: 0.92, high: 1 } },
  { temperatureC: 20, resistanceRatio: { value: 1, low: 1, high: 1 }, capacityShare: { value: 1, low: 1, high: 1 } },
  { temperatureC: 40, resistanceRatio: { value: 0.8, low: 0.65, high: 1 }, capacityShare: { value: 1, low: 0.97, high: 1.03 } },
];

export const COLD_FACTORS_SOURCE = 'wide estimate of common practice; studies agree on the direction, not on a curve';

/** The chemistry of this name; a few ways of writing it are understood. */
export function chemistry(name: string): Chemistry | undefined {
  const key = name.toLowerCase().replaceAll(/[\s_-]+/g, '');
  const known: readonly (readonly [RegExp, Chemistry['name']])[] = [
    [/^(lithiumironphosphate|lifepo4?|lfp)/, 'lithium iron phosphate'],
    [/^(lithium|liion|lipo|li)/, 'lithium-ion'],
    [/^(nickelmetalhydride|nickel|nimh)/, 'nickel-metal hydride'],
    [/^(leadacid|lead|agm)/, 'lead-acid'],
  ];
  const meant = known.find(([pattern]) => pattern.test(key))?.[1];
  return CHEMISTRIES.find((one) => one.name === meant);
}

/** Cells in series that a marked voltage means: 14.4 and 14.8 V are four of lithium-ion. */
export function cellsInSeries({ markedV }: Chemistry, nominalV: number): number {
  return Math.max(1, Math.round(nominalV / ((markedV[0] + markedV[1]) / 2)));
}

/** The factors at a temperature, straight between the rows and held beyond them. */
export function coldFactor(temperatureC: number): ColdFactor {
  const above = COLD_FACTORS.findIndex((row) => row.temperatureC >= temperatureC);
  const upper = COLD_FACTORS[above] ?? COLD_FACTORS.at(-1);
  const lower = COLD_FACTORS[above - 1];
  if (upper === undefined) throw new Error('the table of cold factors is empty');
  if (above <= 0 || lower === undefined) return { ...upper, temperatureC };
  const share = (temperatureC - lower.temperatureC) / (upper.temperatureC - lower.temperatureC);
  return {
    temperatureC,
    resistanceRatio: mixed(lower.resistanceRatio, upper.resistanceRatio, share),
    capacityShare: mixed(lower.capacityShare, upper.capacityShare, share),
  };
}

type Band = ColdFactor['capacityShare'];

function mixed(a: Band, b: Band, share: number): Band {
  const at = (key: keyof Band) => a[key] + (b[key] - a[key]) * share;
  return { value: at('value'), low: at('low'), high: at('high') };
}
