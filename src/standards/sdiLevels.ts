/** Levels of the serial digital interface on one coaxial link. */
export interface SdiLevel {
  readonly name: 'SD' | 'HD' | '3G' | '6G' | '12G';
  /** Nominal; pictures at rates over 1.001 run it over 1.001 too. */
  readonly rateGbps: number;
  /** Loss at half the bit rate that a receiver typically makes good: a practice, not a limit; the part's own figure comes first. */
  readonly budgetDb: { readonly value: number; readonly low: number; readonly high: number };
  readonly source: string;
}

/** From the slowest to the fastest. */
export const SDI_LEVELS: readonly SdiLevel[] = [
  { name: 'SD', rateGbps: 0.27, budgetDb: { value: 20, low: 20, high: 30 }, source: 'SMPTE ST 259; budget from memory' },
  { name: 'HD', rateGbps: 1.485, budgetDb: { value: 20, low: 20, high: 30 }, source: 'SMPTE ST 292-1; budget typical, common practice' },
  { name: '3G', rateGbps: 2.97, budgetDb: { value: 20, low: 20, high: 30 }, source: 'SMPTE ST 424; budget typical, common practice' },
  { name: '6G', rateGbps: 5.94, budgetDb: { value: 40, low: 30, high: 40 }, source: 'SMPTE ST 2081-1; budget typical, common practice' },
  { name: '12G', rateGbps: 11.88, budgetDb: { value: 40, low: 30, high: 40 }, source: 'SMPTE ST 2082-1; budget typical, common practice' },
];

/** The level of this name. */
export function sdiLevel(name: string): SdiLevel | undefined {
  return SDI_LEVELS.find((level) => level.name === name);
}

/** The slowest level whose nominal rate is enough, or none. */
export function smallestSdiLevel(nominalGbps: number): SdiLevel | undefined {
  return SDI_LEVELS.find((level) => nominalGbps <= level.rateGbps * (1 + 1e-9));
}
