/** What share of the tightening torque becomes force in a screw: T = K·F·d. A band, never a number: one batch scatters by 30 %. */
export interface NutFactor {
  readonly name: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

const TABLE = 'Shigley, torque factors (after Bowman), read second-hand; bounds: ±30 % scatter, Bickford';

export const NUT_FACTORS: readonly NutFactor[] = [
  { name: 'not known', value: 0.2, low: 0.15, high: 0.3, source: 'Shigley: 0.2 where the condition is not known; band: Bickford' },
  { name: 'plain, black', value: 0.3, low: 0.21, high: 0.39, source: TABLE },
  { name: 'zinc plated', value: 0.2, low: 0.14, high: 0.26, source: TABLE },
  { name: 'lubricated', value: 0.18, low: 0.126, high: 0.234, source: TABLE },
  { name: 'anti-seize', value: 0.12, low: 0.084, high: 0.156, source: TABLE },
];

export function nutFactor(name: string): NutFactor | undefined {
  return NUT_FACTORS.find((one) => one.name === name.toLowerCase().trim());
}
