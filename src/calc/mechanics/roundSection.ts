/** Area and second moments of a round bar or tube. */
export interface RoundSection {
  readonly areaMm2: number;
  /** Against bending, the same all round. */
  readonly bendingMm4: number;
  /** Against twist. */
  readonly twistMm4: number;
  /** Area that resists shear. */
  readonly shearAreaMm2: number;
}

/** Poisson's number of metals; between 0 and 0.4 the shear area changes by less than a twentieth either way. */
const POISSON = 0.3;

/**
 * π(D² − d²)/4, π(D⁴ − d⁴)/64 and twice that; shear area by Cowper, J. Appl. Mech. 33 (1966): 0.89 of the area of a bar, 0.53
 * of a thin tube's.
 */
export function roundSection(outerMm: number, innerMm: number): RoundSection {
  const [outer, inner] = [outerMm * outerMm, innerMm * innerMm];
  const areaMm2 = (Math.PI * (outer - inner)) / 4;
  const bendingMm4 = (areaMm2 * (outer + inner)) / 16;
  const bore = (innerMm / outerMm) ** 2;
  const round = (1 + bore) ** 2;
  const share = (6 * (1 + POISSON) * round) / ((7 + 6 * POISSON) * round + (20 + 12 * POISSON) * bore);
  return { areaMm2, bendingMm4, twistMm4: 2 * bendingMm4, shearAreaMm2: areaMm2 * share };
}
