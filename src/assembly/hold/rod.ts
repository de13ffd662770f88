import { roundSection } from '../../calc/mechanics/roundSection.ts';
import type { NetworkBeam, NetworkBody } from '../../calc/mechanics/network/model.ts';
import { NO_INERTIA } from '../../calc/mechanics/massProperties.ts';
import type { Point, Solid } from '../../shoot/schema/mechanics.ts';
import { type Material, material } from '../../standards/materials.ts';
import { type Transform, type Vector, add, apply, dot, rotate, scale, subtract, unit } from '../placing/Transform.ts';
import type { SetupPiece } from '../setupPieces.ts';

/** A rod as bodies along it, at its ends and at each clamp, and beams between them. */
export interface Rod {
  readonly piece: SetupPiece;
  readonly bodies: readonly NetworkBody[];
  readonly beams: readonly NetworkBeam[];
  /** The body of the rod that something clamped at a place holds on to. */
  readonly nodeAt: (place: Vector) => string;
}

/** Clamps nearer to each other than this hold one place of the rod. */
const ONE_PLACE_MM = 1;

/** `undefined` where the piece is no rod, or not entered as one that bends. */
export function rodOf(piece: SetupPiece, place: Transform, massG: number, clamps: readonly Vector[]): Rod | undefined {
  const outerMm = piece.part.figure('beam/outerMm')?.value;
  const lengthMm = piece.part.figure('beam/lengthMm')?.value;
  const rodPoint = Object.values((piece.part.read('points') ?? {}) as Readonly<Record<string, Point>>).find(({ kind, at }) => kind === 'rod' && at !== undefined);
  if (outerMm === undefined || lengthMm === undefined || rodPoint?.at === undefined) return undefined;
  const out = unit(rotate(place.r, rodPoint.out ?? [0, 0, 1]), [0, 0, 1]);
  const from = apply(place, rodPoint.at);
  const along = (at: Vector) => dot(subtract(at, from), out);
  const stops = stopsAlong([...clamps.map(along), ...endsOf(piece, place, along)]);
  if (stops.length < 2) return undefined;
  const name = (k: number) => (k === 0 ? piece.ref : `${piece.ref} ${k}`);
  const at = (s: number): Vector => add(from, scale(out, s));
  const span = (stops.at(-1) as number) - (stops[0] as number);
  // Each place bears the mass of half a stretch either way.
  const share = (k: number) => ((stops[Math.min(k + 1, stops.length - 1)] as number) - (stops[Math.max(k - 1, 0)] as number)) / 2 / span;
  // By the doubts of both a thin wall may come to nothing.
  const { areaMm2, bendingMm4, twistMm4, shearAreaMm2 } = roundSection(outerMm, Math.min(piece.part.figure('beam/innerMm')?.value ?? 0, 0.99 * outerMm));
  const section = { ...stuffOf(piece), areaMm2, iyMm4: bendingMm4, izMm4: bendingMm4, jMm4: twistMm4, shearAreaMm2 };
  return {
    piece,
    bodies: stops.map((s, k) => ({ name: name(k), massG: massG * share(k), centreMm: at(s), inertiaKgM2: NO_INERTIA })),
    beams: stops.slice(1).map((s, k) => ({ a: name(k), b: name(k + 1), fromMm: at(stops[k] as number), toMm: at(s), ...section })),
    nodeAt: (spot) => name(stops.reduce((best, s, k) => (Math.abs(s - along(spot)) < Math.abs((stops[best] as number) - along(spot)) ? k : best), 0)),
  };
}

/** An unknown material counts as aluminium: the softer of the usual two. */
function stuffOf(piece: SetupPiece): Pick<Material, 'youngGPa' | 'shearGPa'> {
  const { youngGPa, shearGPa } = material((piece.part.read('beam/material') as string | undefined) ?? '') ?? (material('aluminium') as Material);
  return { youngGPa, shearGPa };
}

/** The ends of its cylinder, where its shape is entered. */
function endsOf(piece: SetupPiece, place: Transform, along: (at: Vector) => number): number[] {
  const solid = ((piece.part.read('solids') ?? []) as readonly Solid[]).find((one) => one.shape !== 'box');
  if (solid === undefined) return [];
  const half: Vector = [solid.along === 'x' ? solid.lengthMm / 2 : 0, solid.along === 'y' ? solid.lengthMm / 2 : 0, solid.along === 'z' ? solid.lengthMm / 2 : 0];
  const middle: Vector = solid.atMm ?? [0, 0, 0];
  return [along(apply(place, subtract(middle, half))), along(apply(place, add(middle, half)))];
}

function stopsAlong(all: readonly number[]): number[] {
  const stops: number[] = [];
  for (const s of all.toSorted((a, b) => a - b)) if (stops.length === 0 || s - (stops.at(-1) as number) > ONE_PLACE_MM) stops.push(s);
  return stops;
}
