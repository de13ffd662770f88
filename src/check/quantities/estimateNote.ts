/** Stands with every mechanical verdict. */
export const ESTIMATE = 'Estimate, not a load rating.';

/** Above people and on vehicles the program only points to who decides. */
export const OVERHEAD = 'Above people or on a vehicle: rated hardware, a second independent attachment, and a qualified grip or rigger who decides under local rules.';

/** What a mechanical verdict on a build must say. */
export const cautionsFor = (purpose: unknown): string[] => (purpose === 'vehicle' ? [ESTIMATE, OVERHEAD] : [ESTIMATE]);
