import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import type { Point, Solid } from '../../shoot/schema/mechanics.ts';
import { bulkOf, shapeOf } from '../coarseShape.ts';
import { type SetupPiece, pieceSetting, setupPieces } from '../setupPieces.ts';
import { jointTransform, pointFrame } from './jointFrame.ts';
import { type Transform, type Vector, apply, compose, inverse } from './Transform.ts';

/** A solid of a part as it stands. */
export interface PlacedSolid {
  readonly solid: Solid;
  /** Frame of the solid's own middle, in the build. */
  readonly at: Transform;
  /** Its shape is a guess from kind and figures. */
  readonly coarse: boolean;
}

/** A piece, or a pack on a plate, as it stands. It holds where to look; what it looks like is read when asked for. */
export class PlacedPart {
  /** `build/piece`; of a pack `build/piece#1`. */
  readonly ref: string;
  readonly build: string;
  readonly part: PartView;
  /** The piece; of a pack the plate it is on. */
  readonly piece: SetupPiece;
  /** From the part's own frame to the frame of its build. */
  readonly at: Transform;

  constructor({ ref, build, part, piece, at }: { ref: string; build: string; part: PartView; piece: SetupPiece; at: Transform }) {
    this.ref = ref;
    this.build = build;
    this.part = part;
    this.piece = piece;
    this.at = at;
  }

  get name(): string {
    return this.isPack ? this.part.name : this.piece.name;
  }

  get isPack(): boolean {
    return this.ref.includes('#');
  }

  get solids(): readonly PlacedSolid[] {
    const { solids, coarse } = shapeOf(this.part);
    return solids.map((solid) => ({ solid, coarse, at: compose(this.at, { r: [1, 0, 0, 0, 1, 0, 0, 0, 1], t: solid.atMm ?? [0, 0, 0] }) }));
  }

  /** Frame of a point, in the build; `undefined` where its place or direction is not entered. */
  pointFrame(id: string): Transform | undefined {
    const point = this.part.read(`points/${id}`) as Point | undefined;
    const frame = point === undefined ? undefined : pointFrame(point);
    return frame === undefined ? undefined : compose(this.at, frame);
  }

  /** The points of the part and where they stand, those without a place left out. */
  get points(): ReadonlyMap<string, { readonly point: Point; readonly frame: Transform }> {
    const points = Object.entries((this.part.read('points') ?? {}) as Readonly<Record<string, Point>>);
    return new Map(points.flatMap(([id, point]) => {
      const frame = pointFrame(point);
      return frame === undefined ? [] : [[id, { point, frame: compose(this.at, frame) }] as const];
    }));
  }

  /** Centre of mass: as entered, else the middle of its solids by volume; `undefined` where nothing tells. */
  get centre(): Vector | undefined {
    const entered = this.part.read('centreMm') as Vector | undefined;
    if (entered !== undefined) return apply(this.at, entered);
    const { solids } = bulkOf(this.part);
    const volumes = solids.map(volumeOf);
    const whole = volumes.reduce((sum, one) => sum + one, 0);
    if (whole <= 0) return undefined;
    const middle = (axis: 0 | 1 | 2): number => solids.reduce((sum, { atMm = [0, 0, 0] }, at) => sum + atMm[axis] * (volumes[at] as number), 0) / whole;
    return apply(this.at, [middle(0), middle(1), middle(2)]);
  }
}

function volumeOf(solid: Solid): number {
  if (solid.shape === 'box') return Math.abs(solid.sizeMm[0] * solid.sizeMm[1] * solid.sizeMm[2]);
  const bore = solid.shape === 'tube' ? solid.boreMm : 0;
  return (Math.PI / 4) * Math.max(solid.diameterMm ** 2 - bore ** 2, 0) * solid.lengthMm;
}

/** Everything of a setup that has a place: pieces, and the packs on plates that have points for them. */
export function placedParts(ledger: Ledger, setup: string, glass: string, places: ReadonlyMap<string, Transform>): Map<string, PlacedPart> {
  const pieces = setupPieces(ledger, setup, glass);
  const placed = new Map<string, PlacedPart>();
  for (const [ref, at] of places) {
    const piece = pieces.get(ref);
    if (piece === undefined) continue;
    placed.set(ref, new PlacedPart({ ref, build: piece.build, part: piece.part, piece, at }));
    for (const pack of packsOn(ledger, piece, at)) placed.set(pack.ref, pack);
  }
  return placed;
}

/** Packs stand on the plate's own battery points, in order; a plate without such points carries them unplaced. */
function packsOn(ledger: Ledger, piece: SetupPiece, at: Transform): PlacedPart[] {
  const seats = batteryPoints(piece.part);
  return (pieceSetting(piece, 'packs') ?? []).flatMap((id, index) => {
    const part = new PartView(ledger, id);
    const [seat, foot] = [seats[index], batteryPoints(part)[0]].map((point) => (point === undefined ? undefined : pointFrame(point)));
    if (seat === undefined || foot === undefined) return [];
    const stands = compose(compose(compose(at, seat), jointTransform('battery plate', {})), inverse(foot));
    return [new PlacedPart({ ref: `${piece.ref}#${index + 1}`, build: piece.build, part, piece, at: stands })];
  });
}

const batteryPoints = (part: PartView): Point[] => Object.values((part.read('points') ?? {}) as Readonly<Record<string, Point>>).filter(({ kind }) => kind === 'battery plate');
