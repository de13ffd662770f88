import type { Unit } from '../units/Unit.ts';

/**
 * How far a figure without stated bounds may be out, as a share of its value, by its basis and by how well such figures are
 * known at all. Common practice: ever wider from the bench to the guess. Stated bounds always come first.
 */
const SHARES = {
  /** Counted, not measured. */
  exact: { measured: 0, sheet: 0, estimate: 0, typical: 0 },
  /** Lengths, angles, ratios, pixels: a maker's drawing is good to about a hundredth. */
  size: { measured: 0.005, sheet: 0.01, estimate: 0.05, typical: 0.1 },
  /** Masses, volts, hertz, milliseconds, watts: rated under somebody else's conditions. */
  rating: { measured: 0.03, sheet: 0.1, estimate: 0.25, typical: 0.35 },
  /** Torques, stiffness, resistance, luminance, radio levels: they scatter from copy to copy and day to day. */
  soft: { measured: 0.1, sheet: 0.25, estimate: 0.5, typical: 0.6 },
} as const;

const KNOWN_AS: Partial<Record<Unit, keyof typeof SHARES>> = {
  px: 'exact', teeth: 'exact', count: 'exact', mm: 'size', deg: 'size', ratio: 'size', 'mm²': 'size', dpt: 'size', 'module mm': 'size',
  'N·m': 'soft', 'N·m/rad': 'soft', 'N/mm': 'soft', ohm: 'soft', 'cd/m²': 'soft', dBm: 'soft', dBi: 'soft', dB: 'soft', lx: 'soft', N: 'soft',
};

export type FigureBasis = keyof (typeof SHARES)['size'];

/** Share of the value by which a figure of this unit and basis may be out, either way. */
export function defaultDoubt(unit: Unit, basis: FigureBasis): number {
  return SHARES[KNOWN_AS[unit] ?? 'rating'][basis];
}
