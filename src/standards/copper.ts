/** Annealed copper. µΩ·m is the same number as Ω·mm²/m. */
export const COPPER = {
  microohmMetre: 1 / 58, // at 20 °C; IEC 60028
  perKelvin: 0.00393, // linear, about 20 °C; IEC 60028
  referenceC: 20,
  source: 'IEC 60028',
} as const;
