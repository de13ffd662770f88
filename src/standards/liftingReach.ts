/** How the revised NIOSH lifting equation is applied where nobody is there to be measured. */
const NIOSH = 'NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation, from memory';

/** Where the hands are not measured, they are taken to hold the middle of what is lifted, so far ahead of the ankles. */
export const REACH = {
  /** Hands at knee height and above: this, and half the depth of what is lifted. */
  highMm: 200,
  /** Hands lower than that: one bends over it. */
  lowMm: 250,
  lowBelowMm: 250,
  source: NIOSH,
} as const;

/** What several people lift together, as a share of what each could alone, all added up. They are never quite level nor in time. */
export const TEAM_SHARE = { two: 2 / 3, three: 1 / 2, source: 'HSE, Manual handling, guidance on the Regulations (L23): two people two thirds of their sum; read second-hand' } as const;
