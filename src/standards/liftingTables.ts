/**
 * Tables of the revised NIOSH lifting equation, Applications Manual, DHHS (NIOSH) Publication 94-110: the frequency and the
 * coupling multipliers. The columns for one hour read in a public copy, the others from memory. It covers lifting with two
 * hands, not holding or carrying.
 */

/** Lifts a minute, of the rows. */
export const LIFTS_PER_MIN: readonly number[] = [0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15];

const UP_TO_1_H = [1, 0.97, 0.94, 0.91, 0.88, 0.84, 0.8, 0.75, 0.7, 0.6, 0.52, 0.45, 0.41, 0.37, 0.34, 0.31, 0.28];
const UP_TO_2_H = [0.95, 0.92, 0.88, 0.84, 0.79, 0.72, 0.6, 0.5, 0.42, 0.35, 0.3, 0.26, 0.23, 0.21, 0, 0, 0];
const UP_TO_8_H = [0.85, 0.81, 0.75, 0.65, 0.55, 0.45, 0.35, 0.27, 0.22, 0.18, 0.15, 0.13, 0, 0, 0, 0, 0];

/** Frequency multipliers by the longest hours of lifting they hold for; with hands below 75 cm the last rows are 0. */
export const FREQUENCY_MULTIPLIERS: readonly { readonly upToH: number; readonly multipliers: readonly number[]; readonly lowLiftsUpTo: number }[] = [
  { upToH: 1, multipliers: UP_TO_1_H, lowLiftsUpTo: 12 },
  { upToH: 2, multipliers: UP_TO_2_H, lowLiftsUpTo: 10 },
  { upToH: 8, multipliers: UP_TO_8_H, lowLiftsUpTo: 8 },
];

/** Hands at or above 75 cm, and below. */
export const COUPLING_MULTIPLIERS = {
  good: { high: 1, low: 1, says: 'handles made for it' },
  fair: { high: 1, low: 0.95, says: 'fingers bent by a right angle under a box' },
  poor: { high: 0.9, low: 0.9, says: 'nothing to hold, or it sags' },
} as const;

/** Height of the hands, mm, that parts the columns. */
export const HIGH_LIFT_MM = 750;
