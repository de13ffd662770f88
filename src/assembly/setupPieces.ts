import type { Ledger } from '../shoot/ledger/Ledger.ts';
import { PartView } from '../shoot/ledger/PartView.ts';
import type { Piece } from '../shoot/schema/build.ts';

/** A piece in use in a setup. Pieces of the glass count to the camera's build while they are on it. */
export interface SetupPiece {
  /** `build/piece`: unique in the setup. */
  readonly ref: string;
  readonly build: string;
  readonly id: string;
  /** Where the piece stands in the file. */
  readonly path: string;
  readonly fromGlass: boolean;
  readonly part: PartView;
  /** The piece's own name, else the part's. */
  readonly name: string;
}

/** All pieces of a setup with one of its glasses: camera build, glass, live stations; keyed by `build/piece`. */
export function setupPieces(ledger: Ledger, setup: string, glass: string): ReadonlyMap<string, SetupPiece> {
  return ledger.cell(`pieces|${setup}|${glass}`, () => {
    const camera = ledger.at(`setups/${setup}/camera`) as string;
    const stations = (ledger.at(`setups/${setup}/stations`) ?? []) as readonly string[];
    const pieces = new Map<string, SetupPiece>();
    const add = (build: string, root: string, fromGlass: boolean): void => {
      for (const id of ledger.keys(`${root}/pieces`)) {
        const path = `${root}/pieces/${id}`;
        const part = new PartView(ledger, ledger.at(`${path}/of`) as string);
        const name = (ledger.at(`${path}/name`) as string | undefined) ?? part.name;
        pieces.set(`${build}/${id}`, { ref: `${build}/${id}`, build, id, path, fromGlass, part, name });
      }
    };
    add(camera, `builds/${camera}`, false);
    add(camera, `glasses/${glass}`, true);
    for (const station of stations) add(station, `builds/${station}`, false);
    return pieces;
  });
}

/** How a piece is set: mode, net, channel, squeeze, zoom, gear, packs. */
export function pieceSetting<Key extends keyof Piece>(piece: SetupPiece, key: Key): Piece[Key] {
  return piece.part.ledger.at(`${piece.path}/${key}`) as Piece[Key];
}
