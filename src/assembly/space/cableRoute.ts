import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Port } from '../../shoot/schema/electrics.ts';
import type { Line } from '../../shoot/schema/build.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import { type Vector, apply, length, subtract } from '../placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../setupPieces.ts';
import { type Body, bodies, boxAround } from './bodies.ts';
import { worldSolids } from './worldSolids.ts';

export interface CableRoute {
  readonly from: SetupPiece;
  readonly to: SetupPiece;
  /** Corners of the way, port to port. */
  readonly way: readonly Vector[];
  /** Along the way, without slack. */
  readonly lengthMm: number;
  /** A port's place was not entered: the middle of its piece stands for it. */
  readonly guessed: boolean;
}

/**
 * The way of a cable from port to port: straight where nothing is between, else along the axes of the camera (across, up, along) in
 * the order of these that is shortest and passes through no piece; where none is clear, the longest of them, as cables go
 * round things. `undefined` where an end is not placed or the ends are in different builds.
 */
export function cableRoute(ledger: Ledger, setup: string, glass: string, build: string, line: Line): CableRoute | undefined {
  const [from, to] = [portPlace(ledger, setup, glass, build, line.from), portPlace(ledger, setup, glass, build, line.to)];
  if (from === undefined || to === undefined) return undefined;
  const others = bodies(ledger, setup, glass).filter(({ world: { piece } }) => piece.build === build && piece.ref !== from.piece.ref && piece.ref !== to.piece.ref);
  const isWayClear = (way: readonly Vector[]) => way.every((corner, at) => at === 0 || isClear(way[at - 1] as Vector, corner, others));
  const straight = [from.at, to.at];
  const way = isWayClear(straight) ? straight : wayAround(from.at, to.at, isWayClear);
  return { from: from.piece, to: to.piece, way, lengthMm: lengthOf(way), guessed: from.guessed || to.guessed };
}

function isClear(from: Vector, to: Vector, others: readonly Body[]): boolean {
  const box = boxAround([from, to]);
  return !others.some((body) => body.meets([from, to], box));
}

function portPlace(ledger: Ledger, setup: string, glass: string, build: string, end: string): { piece: SetupPiece; at: Vector; guessed: boolean } | undefined {
  const [portId = '', pieceId = '', other] = end.split('/').toReversed();
  if (other !== undefined && other !== build) return undefined;
  const piece = setupPieces(ledger, setup, glass).get(`${build}/${pieceId}`);
  const place = piece && placeSetup(ledger, setup, glass).places.get(piece.ref);
  if (piece === undefined || place === undefined) return undefined;
  const at = (piece.part.read(`ports/${portId}`) as Port | undefined)?.at;
  if (at !== undefined) return { piece, at: apply(place, at), guessed: false };
  const own = worldSolids(ledger, setup, glass).find((solid) => solid.piece.ref === piece.ref);
  return { piece, at: own?.place.t ?? place.t, guessed: true };
}

const ORDERS = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]] as const;

/** The first way along the axes that is clear, else the last: all of them are of one length, and differ in what they pass. */
function wayAround(a: Vector, b: Vector, isWayClear: (way: readonly Vector[]) => boolean): readonly Vector[] {
  let way: Vector[] = [];
  for (const order of ORDERS) {
    way = [a];
    let at: Vector = a;
    for (const axis of order) {
      at = at.with(axis, b[axis]) as unknown as Vector;
      way.push(at);
    }
    if (isWayClear(way)) return way;
  }
  return way;
}

const lengthOf = (way: readonly Vector[]): number => way.reduce((sum, corner, at) => sum + (at === 0 ? 0 : length(subtract(corner, way[at - 1] as Vector))), 0);
