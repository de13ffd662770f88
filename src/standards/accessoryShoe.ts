/** The accessory shoe, with or without a contact. It holds by a nut or a spring, at one place: whatever stands on it nods. */
export const ACCESSORY_SHOE = {
  /** Of the foot. */
  footWidthMm: 18.6, footThicknessMm: 2,
  /** Of the shoe. */
  slotWidthMm: 18.75, slotHeightMm: 2.1, lipOpeningMm: 12.5,
  withinMm: 0.2,
  source: 'ISO 518, from memory; measure where a fit depends on it',
} as const;
