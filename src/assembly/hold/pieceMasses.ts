import { type MassProperties, NO_INERTIA, boxInertia, composite, tubeInertia, turned } from '../../calc/mechanics/massProperties.ts';
import type { Tensor } from '../../calc/mechanics/vector.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import type { Point, Solid } from '../../shoot/schema/mechanics.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import { IDENTITY, type Transform, type Vector, add, apply, rotate, scale, unit } from '../placing/Transform.ts';
import { type SetupPiece, pieceSetting, setupPieces } from '../setupPieces.ts';
import { bulkOf } from '../coarseShape.ts';

/** A piece of a build with all that rides on it (packs on a plate), as the laws of motion see it. */
export interface PieceMass extends MassProperties {
  readonly piece: SetupPiece;
  /** Whether it stands somewhere; without that its centre has no meaning. */
  readonly placed: boolean;
  readonly lowG: number;
  readonly highG: number;
}

export interface BuildMasses {
  readonly weighed: readonly PieceMass[];
  /** Pieces, or packs on them, whose mass is not entered. */
  readonly unweighed: readonly SetupPiece[];
}

/** A pack without a shape of its own is taken to stand out this far from its plate. Common practice: packs of 100 to 150 Wh. */
const PACK_DEPTH_MM = 55;

/** Every piece of one build of a setup with its mass, centre and inertia, in the frame of the build. */
export function pieceMasses(ledger: Ledger, setup: string, glass: string, build: string): BuildMasses {
  return ledger.cell(`piece masses|${setup}|${glass}|${build}`, () => {
    const { places } = placeSetup(ledger, setup, glass);
    const weighed: PieceMass[] = [];
    const unweighed: SetupPiece[] = [];
    for (const piece of setupPieces(ledger, setup, glass).values()) {
      if (piece.build !== build) continue;
      const place = places.get(piece.ref);
      const own = massOf(piece.part);
      const packs = packsOn(piece);
      if (own === undefined || packs.some((one) => one === undefined)) unweighed.push(piece);
      const parts = [...(own === undefined ? [] : [own]), ...packs.filter((one) => one !== undefined)];
      if (parts.length === 0) continue;
      const whole = composite(parts);
      const stand = place ?? IDENTITY;
      weighed.push({
        piece, placed: place !== undefined, massG: whole.massG, centreMm: apply(stand, whole.centreMm as Vector), inertiaKgM2: turned(whole.inertiaKgM2, axesOf(stand)),
        lowG: parts.reduce((sum, { figure }) => sum + figure.low, 0), highG: parts.reduce((sum, { figure }) => sum + figure.high, 0),
      });
    }
    return { weighed, unweighed };
  });
}

/** The axes of a frame as rows in the common axes. */
export const axesOf = ({ r }: Transform): Tensor => [[r[0], r[3], r[6]], [r[1], r[4], r[7]], [r[2], r[5], r[8]]];

type Weighed = MassProperties & { readonly figure: Figure };

/** A part by itself, in its own frame. */
function massOf(part: PartView): Weighed | undefined {
  const figure = part.figure('massG');
  return figure === undefined ? undefined : { ...spread(part, figure.value), figure };
}

/** Where a part has its centre of mass, in its own frame, whatever it weighs. */
export const centreOf = (part: PartView): Vector => spread(part, 1).centreMm as Vector;

/** A mass at the part's stated centre, else spread over its solids. */
function spread(part: PartView, massG: number): MassProperties {
  const { solids } = bulkOf(part);
  const volume = solids.reduce((sum, solid) => sum + volumeOf(solid), 0);
  const bodies = solids.map((solid) => solidMass(solid, volume > 0 ? (massG * volumeOf(solid)) / volume : massG / solids.length));
  const whole = bodies.length === 0 ? { massG, centreMm: [0, 0, 0] as const, inertiaKgM2: NO_INERTIA } : composite(bodies);
  return { massG, centreMm: (part.read('centreMm') as Vector | undefined) ?? whole.centreMm, inertiaKgM2: whole.inertiaKgM2 };
}

function solidMass(solid: Solid, massG: number): MassProperties {
  const centreMm: Vector = solid.atMm ?? [0, 0, 0];
  if (solid.shape === 'box') return { massG, centreMm, inertiaKgM2: boxInertia(massG, solid.sizeMm) };
  const { diameterMm, lengthMm, along } = solid;
  return { massG, centreMm, inertiaKgM2: tubeInertia(massG, { diameterMm, boreMm: solid.shape === 'tube' ? solid.boreMm : 0, lengthMm, along }) };
}

export function volumeOf(solid: Solid): number {
  if (solid.shape === 'box') return solid.sizeMm[0] * solid.sizeMm[1] * solid.sizeMm[2];
  const bore = solid.shape === 'tube' ? solid.boreMm : 0;
  return (Math.PI / 4) * (solid.diameterMm ** 2 - bore ** 2) * solid.lengthMm;
}

/** The packs a plate starts with, each on one of its points, in the plate's frame; `undefined` for one whose mass is not entered. */
function packsOn(piece: SetupPiece): (Weighed | undefined)[] {
  const packs = pieceSetting(piece, 'packs') ?? [];
  if (packs.length === 0) return [];
  const points = Object.entries((piece.part.read('points') ?? {}) as Readonly<Record<string, Point>>)
    .filter(([, { kind, at }]) => kind === 'battery plate' && at !== undefined).toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, point]) => point);
  return packs.map((id, at) => {
    const pack = massOf(new PartView(piece.part.ledger, id));
    const point = points[at % Math.max(1, points.length)];
    if (pack === undefined) return undefined;
    const seat = point?.at ?? [0, 0, 0];
    const away = rotate(IDENTITY.r, scale(unit(point?.out ?? [0, 0, -1], [0, 0, -1]), PACK_DEPTH_MM / 2));
    return { ...pack, centreMm: add(seat, away) };
  });
}
