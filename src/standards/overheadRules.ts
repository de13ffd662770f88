/** What German rules ask of things hung above people and stages. Shown as a caution beside local rules: the program certifies nothing. */
export interface OverheadRule {
  readonly name: 'wire rope' | 'other metal';
  /** Breaking load over working load. */
  readonly utilisation: number;
  /** The same with people below. */
  readonly utilisationAbovePeople: number;
  readonly source: string;
}

const DGUV = 'DGUV Information 215-313, German rules';

export const OVERHEAD_RULES: readonly OverheadRule[] = [
  { name: 'wire rope', utilisation: 5, utilisationAbovePeople: 10, source: DGUV },
  { name: 'other metal', utilisation: 4, utilisationAbovePeople: 8, source: DGUV },
];

export const OVERHEAD_FACTS = {
  /** Share of the marked load that may be used above people. */
  shareOfMarkedLoad: 0.5,
  /** Drop that a secondary safety may allow, at most. */
  mostDropMm: 200,
  caution:
    'Above people or on a vehicle: rated hardware, a second independent attachment, ' +
    'and a qualified grip or rigger who decides under local rules. Nothing here is a load certificate.',
  source: DGUV,
} as const;
