/** Outside diameters of lens fronts that clamp-on matte boxes and rings are made for. */
export const FRONT_DIAMETERS_MM: readonly number[] = [80, 95, 110, 114, 134];
export const FRONT_DIAMETERS_SOURCE = 'common practice';

/** A front made to a nominal size is a little under it, so that a clamp of that size goes on: ISO tolerance h7 or thereabouts. */
export const FRONT_FIT = {
  /** Tolerance IT7 of 80 to 120 mm. */
  toleranceMm: 0.035,
  /** A printed ring slides on with so much air on each side. */
  printedClearanceMm: { value: 0.25, low: 0.2, high: 0.3 },
  source: 'ISO 286 IT7 for 95 mm: 35 µm (from memory); printed slide fit: common practice',
} as const;

/** The size a front is sold as, if it is one: within half a millimetre. */
export function nominalFrontMm(diameterMm: number): number | undefined {
  return FRONT_DIAMETERS_MM.find((nominal) => Math.abs(nominal - diameterMm) <= 0.5);
}
