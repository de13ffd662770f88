/** Outside diameters of lens fronts that clamp-on matte boxes and rings are made for: common practice. */
export const FRONT_DIAMETERS_MM: readonly number[] = [80, 95, 110, 114, 134];

/** The size a front is sold as, if it is one: within half a millimetre. */
export function nominalFrontMm(diameterMm: number): number | undefined {
  return FRONT_DIAMETERS_MM.find((nominal) => Math.abs(nominal - diameterMm) <= 0.5);
}
