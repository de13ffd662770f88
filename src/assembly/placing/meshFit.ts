import type { SetupPiece } from '../setupPieces.ts';
import type { ModelJoint } from './rigModel.ts';
import { IDENTITY, type Transform, apply, cross, dot, length, rotate, scale, subtract } from './Transform.ts';

/** A gear as it stands on a piece: on a lens or focuser, a motor, or a wheel. */
export interface Gear {
  readonly module: number;
  readonly teeth: number;
  readonly faceMm: number | undefined;
  /** A split ring that bumps at the join. */
  readonly split: boolean;
  /** Travel along the axis over the whole focus range. */
  readonly travelMm: number;
}

/** How two gears stand to each other. */
export interface MeshFit {
  /** Distance of the axes less the distance at which they mesh: positive where they are apart. */
  readonly gapMm: number;
  /** How far the middle of one face lies beside the middle of the other, along the axis. */
  readonly offsetMm: number;
  /** Angle between the axes. */
  readonly leanRad: number;
  readonly centreDistanceMm: number;
}

/** The gear a piece carries, or what is missing of it. */
export function gearOf(piece: SetupPiece): Gear | 'none' {
  const { part } = piece;
  const facet = (['focus', 'motor', 'handWheel'] as const).find((one) => part.has(one) && part.read(`${one}/gear`) !== undefined);
  if (facet === undefined) return 'none';
  const fitted = part.ledger.at(`${piece.path}/gearTeeth`) as number | undefined;
  const module = part.figure(`${facet}/gear/module`)?.value;
  const teeth = (facet === 'motor' ? fitted : undefined) ?? (part.read(`${facet}/gear/teeth`) as number | undefined);
  if (module === undefined || teeth === undefined) return 'none';
  return {
    module,
    teeth,
    faceMm: part.figure(`${facet}/gear/faceMm`)?.value,
    split: part.read(`${facet}/gear/split`) === true,
    travelMm: facet === 'focus' ? (part.figure('focus/gearTravelMm')?.value ?? 0) : 0,
  };
}

/** Pitch radii of gears of one module touch when they mesh: m·(z₁ + z₂)/2 (ISO 53 and ISO 21771; gears of unlike module do not). */
export const meshingDistanceMm = (a: Gear, b: Gear): number => ((a.module + b.module) / 2) * ((a.teeth + b.teeth) / 2);

export function meshFitOf({ joint, frameA, frameB }: ModelJoint, a: Gear, b: Gear, places: ReadonlyMap<string, Transform>): MeshFit {
  const [standA, standB] = [places.get(joint.a.ref) ?? IDENTITY, places.get(joint.b.ref) ?? IDENTITY];
  const [centreA, centreB] = [apply(standA, frameA.t), apply(standB, frameB.t)];
  const axis = rotate(standA.r, [frameA.r[2], frameA.r[5], frameA.r[8]]);
  const other = rotate(standB.r, [frameB.r[2], frameB.r[5], frameB.r[8]]);
  const apart = subtract(centreB, centreA);
  const offsetMm = dot(apart, axis);
  const centreDistanceMm = length(subtract(apart, scale(axis, offsetMm)));
  return { gapMm: centreDistanceMm - meshingDistanceMm(a, b), offsetMm, leanRad: Math.asin(Math.min(1, length(cross(axis, other)))), centreDistanceMm };
}
