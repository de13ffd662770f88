import type { Unit } from '../units/Unit.ts';

/**
 * How far a figure without stated bounds may be out, as a share of its value, by its basis and by how well such figures are
 * known at all. Common practice: ever wider from the bench to the guess. Stated bounds always come first.
 */
const SHARES = {
  /** Counted, or one of a standard's few values. */
  exact: { measured: 0, sheet: 0, estimate: 0, typical: 0 },
  /** Lengths, angles, ratios: a maker's drawing is good to about a hundredth. */
  size: { measured: 0.005, sheet: 0.01, estimate: 0.05, typical: 0.1 },
  /** What a thing is named by: the 2 of 2×, 50 mm, 7 inches, full frame. */
  nominal: { measured: 0.005, sheet: 0.01, estimate: 0.03, typical: 0.03 },
  /** Flange distances belong to the mount and are kept to hundredths of a millimetre. */
  flange: { measured: 0.0005, sheet: 0.001, estimate: 0.001, typical: 0.001 },
  /** Volts follow from the chemistry and the count of cells, 3.6 to 3.7 V each for lithium ion, and devices are made for them. */
  volts: { measured: 0.005, sheet: 0.02, estimate: 0.05, typical: 0.05 },
  /** What a pack is marked with; it fades with age. */
  capacity: { measured: 0.03, sheet: 0.05, estimate: 0.15, typical: 0.15 },
  /** Masses: a kitchen scale is good to a hundredth, a sheet leaves a plate or a strap out. */
  mass: { measured: 0.01, sheet: 0.05, estimate: 0.2, typical: 0.3 },
  /** Milliseconds, watts, amperes, hours: rated under somebody else's conditions. */
  rating: { measured: 0.03, sheet: 0.1, estimate: 0.25, typical: 0.35 },
  /** Torques, stiffness, resistance, luminance: they scatter from copy to copy and day to day. */
  soft: { measured: 0.1, sheet: 0.25, estimate: 0.5, typical: 0.6 },
} as const;

/** Where zero is only a mark on the scale, a share of the value says nothing: so far either way, in the unit itself. Common practice. */
const SPREADS = {
  degrees: { measured: 1, sheet: 2, estimate: 5, typical: 5 },
  decibels: { measured: 1, sheet: 3, estimate: 6, typical: 6 },
} as const;

const KNOWN_AS: Partial<Record<Unit, keyof typeof SHARES>> = {
  px: 'exact', teeth: 'exact', count: 'exact', Hz: 'exact', MHz: 'exact', mm: 'size', deg: 'size', ratio: 'size', 'mm²': 'size', dpt: 'size', V: 'volts', Ah: 'capacity', Wh: 'capacity', g: 'mass',
  'N·m': 'soft', 'N·m/rad': 'soft', 'N/mm': 'soft', ohm: 'soft', 'cd/m²': 'soft', lx: 'soft', N: 'soft',
};
const OFF_ZERO: Partial<Record<Unit, keyof typeof SPREADS>> = { '°C': 'degrees', dBm: 'decibels', dBi: 'decibels', dB: 'decibels' };

/** Keys that are known better than their unit tells: gears of a module between those of ISO 54 do not exist, bays are counted. */
const KEY_KNOWN_AS: Readonly<Record<string, keyof typeof SHARES>> = {
  module: 'exact', awg: 'exact', packs: 'exact', bays: 'exact', screws: 'exact', feet: 'exact', maxReceivers: 'exact', squeeze: 'nominal', focalLengthMm: 'nominal', sensorWidthMm: 'nominal', sensorHeightMm: 'nominal', diagonalMm: 'nominal',
  flangeMm: 'flange',
};
/** Parts of a whole. */
const IS_SHARE = /(?:Share|^efficiency|^transmittance|^reflectance)$/;

export type FigureBasis = keyof (typeof SHARES)['size'];

/** Bounds of a figure that states none; `key` is its key in the file. */
export function defaultBounds({ value, key, unit, basis }: { value: number; key: string; unit: Unit; basis: FigureBasis }): { low: number; high: number } {
  const offZero = OFF_ZERO[unit];
  const share = SHARES[(Object.hasOwn(KEY_KNOWN_AS, key) ? KEY_KNOWN_AS[key] : KNOWN_AS[unit]) ?? 'rating'][basis];
  const spread = offZero === undefined ? Math.abs(value) * share : SPREADS[offZero][basis];
  return { low: value - spread, high: IS_SHARE.test(key) ? Math.max(value, Math.min(1, value + spread)) : value + spread };
}
