/** What a network of rigid bodies is made of, as the caller states it. Lengths mm, masses g, forces N, moments N·m, stiffness as named. */
import type { Tensor, Vector } from '../vector.ts';

export interface NetworkBody {
  readonly name: string;
  /** Absent only where the body is fixed; 0 is legal. */
  readonly massG?: number | undefined;
  readonly centreMm: Vector;
  /** About the body's own centre, common axes, products of inertia negative. */
  readonly inertiaKgM2?: Tensor | undefined;
  readonly fixed?: boolean | undefined;
}

export interface Stiffness {
  readonly xNPerMm: number;
  readonly yNPerMm: number;
  readonly zNPerMm: number;
  readonly xNmPerRad: number;
  readonly yNmPerRad: number;
  readonly zNmPerRad: number;
}
export const STIFFNESS_KEYS = ['xNPerMm', 'yNPerMm', 'zNPerMm', 'xNmPerRad', 'yNmPerRad', 'zNmPerRad'] as const;

/** A joint that gives: two bodies held to each other at a place, in six ways. */
export interface NetworkSpring {
  readonly a: string;
  readonly b: string;
  readonly atMm: Vector;
  /** Its own x, y, z as unit vectors; absent: the common axes. */
  readonly axes?: Tensor | undefined;
  /** All six infinite: the bodies are one (as with `NetworkBond`). */
  readonly stiffness: Stiffness;
}

/** A slender bar between two bodies, built into both. */
export interface NetworkBeam {
  readonly a: string;
  readonly b: string;
  readonly fromMm: Vector;
  readonly toMm: Vector;
  readonly youngGPa: number;
  readonly shearGPa: number;
  readonly areaMm2: number;
  /** Bends in its local x–z plane. */
  readonly iyMm4: number;
  /** Bends in its local x–y plane. */
  readonly izMm4: number;
  readonly jMm4: number;
  /** A direction in its local x–y plane; local x runs from `fromMm` to `toMm`. Of no account for a round bar. */
  readonly localY?: Vector | undefined;
  /** Area that resists shear, where the bar is too short for bending alone (Timoshenko); absent: bending alone. */
  readonly shearAreaMm2?: number | undefined;
}

/** A joint that does not give: the two move as one body. */
export interface NetworkBond {
  readonly a: string;
  readonly b: string;
  /** Where what it carries is stated; of no account for how the bodies move. Absent: the centre of `b`. */
  readonly atMm?: Vector | undefined;
}

export interface NetworkModel {
  readonly bodies: readonly NetworkBody[];
  readonly springs?: readonly NetworkSpring[];
  readonly beams?: readonly NetworkBeam[];
  readonly bonds?: readonly NetworkBond[];
}

export interface NetworkLoad {
  readonly body: string;
  readonly forceN?: Vector | undefined;
  readonly momentNm?: Vector | undefined;
  /** Where the force acts; absent: at the body's centre. */
  readonly atMm?: Vector | undefined;
}
