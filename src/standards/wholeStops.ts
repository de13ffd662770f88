/** Whole stops as engraved on lenses. Source: ISO 517. */
export const WHOLE_STOPS = [1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22] as const;
