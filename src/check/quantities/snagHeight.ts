import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { apply } from '../../assembly/placing/Transform.ts';
import { pieceMasses } from '../../assembly/hold/pieceMasses.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import type { Line } from '../../shoot/schema/build.ts';
import type { Port } from '../../shoot/schema/electrics.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type SetupGlass, buildsOf } from '../subjects.ts';
import { type Standing, ownHeight } from './standing.ts';

/** Where somebody who walks into a cable pulls. */
export interface Snag {
  readonly heightMm: number;
  /** "on the cable at Receiver". */
  readonly says: string;
}

/** The topmost plug of a cable that leaves the build, else of any cable on it; without cables the top of it all, for a shoulder. */
export function snagOf(ledger: Ledger, subject: SetupGlass, build: string, standing: Standing): Snag {
  const plugs = plugsOf(ledger, subject, build);
  const leaving = plugs.filter(({ leaves }) => leaves);
  const heights = (leaving.length > 0 ? leaving : plugs).flatMap(({ piece: id, port }): Snag[] => {
    const piece = setupPieces(ledger, subject.setup, subject.glass).get(`${build}/${id}`);
    return piece === undefined ? [] : [{ heightMm: heightOf(ledger, subject, standing, { ref: piece.ref, port }), says: `on the cable at ${piece.name}` }];
  });
  return heights.reduce<Snag | undefined>((top, one) => (top === undefined || one.heightMm > top.heightMm ? one : top), undefined) ?? { heightMm: standing.topMm, says: 'at its top' };
}

interface Plug {
  readonly piece: string;
  readonly port: string;
  readonly leaves: boolean;
}

/** Every plug of a cable of this setup that sits in a piece of the build. */
function plugsOf(ledger: Ledger, { setup, glass }: SetupGlass, build: string): Plug[] {
  const camera = ledger.at(`setups/${setup}/camera`) as string;
  const homes = [...buildsOf(ledger, setup).map((one) => [one, `builds/${one}`] as const), [camera, `glasses/${glass}`] as const];
  return homes.flatMap(([home, root]) => ledger.keys(`${root}/lines`).flatMap((id) => {
    const { from, to, direct } = ledger.at(`${root}/lines/${id}`) as Line;
    if (direct === true) return [];
    const ends = [from, to].map((end) => {
      const [port = '', piece = '', own = home] = end.split('/').toReversed();
      return { port, piece, own };
    });
    return ends.filter(({ own }) => own === build).map(({ port, piece }) => ({ port, piece, leaves: ends.some(({ own }) => own !== build) }));
  }));
}

/** The port itself where its place is entered, else the middle of its piece, else on top of the legs. */
function heightOf(ledger: Ledger, { setup, glass }: SetupGlass, { legs, height, floorY }: Standing, { ref, port }: { ref: string; port: string }): number {
  const piece = setupPieces(ledger, setup, glass).get(ref);
  const stand = placeSetup(ledger, setup, glass).places.get(ref);
  if (piece === undefined || stand === undefined || floorY === undefined || ref === legs.ref) return height.value + (piece === undefined || ref === legs.ref ? 0 : ownHeight(piece) / 2);
  const at = (piece.part.read(`ports/${port}`) as Port | undefined)?.at;
  const middle = pieceMasses(ledger, setup, glass, legs.build).weighed.find((one) => one.piece.ref === ref)?.centreMm;
  const y = at === undefined ? (middle?.[1] ?? stand.t[1]) : apply(stand, at)[1];
  return Math.max(1, y - floorY);
}
