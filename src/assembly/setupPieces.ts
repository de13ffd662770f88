import type { Ledger, Place } from '../shoot/ledger/Ledger.ts';
import { PartView } from '../shoot/ledger/PartView.ts';
import type { Piece } from '../shoot/schema/build.ts';

/**
 * A piece in use in a setup. Pieces of the glass count to the camera's build while they are on it. It holds no values, only where
 * to look: what it is made of is read, and noted, each time it is asked for, so that an answer rests on the pieces it looked at
 * and on no others.
 */
export class SetupPiece {
  readonly #ledger: Ledger;
  readonly build: string;
  readonly id: string;
  /** Where the piece stands in the file. */
  readonly path: string;
  readonly fromGlass: boolean;
  /** `build/piece`: unique in the setup. */
  readonly ref: string;
  readonly #of: Place;
  #ownName: Place | undefined;
  /** The view of what it was made of when last asked; a view holds no values. */
  #view: PartView | undefined;

  constructor(ledger: Ledger, place: { build: string; id: string; path: string; fromGlass: boolean }) {
    this.#ledger = ledger;
    this.build = place.build;
    this.id = place.id;
    this.path = place.path;
    this.fromGlass = place.fromGlass;
    this.ref = `${place.build}/${place.id}`;
    this.#of = ledger.place(`${place.path}/of`);
  }

  get part(): PartView {
    const of = this.#ledger.see(this.#of) as string;
    if (this.#view?.id !== of) this.#view = new PartView(this.#ledger, of);
    return this.#view as PartView;
  }

  /** The piece's own name, else the part's. */
  get name(): string {
    this.#ownName ??= this.#ledger.place(`${this.path}/name`);
    return (this.#ledger.see(this.#ownName) as string | undefined) ?? this.part.name;
  }
}

/** All pieces of a setup with one of its glasses: camera build, glass, live stations; keyed by `build/piece`. */
export function setupPieces(ledger: Ledger, setup: string, glass: string): ReadonlyMap<string, SetupPiece> {
  return ledger.cell(`pieces|${setup}|${glass}`, () => {
    const camera = ledger.at(`setups/${setup}/camera`) as string;
    const stations = (ledger.at(`setups/${setup}/stations`) ?? []) as readonly string[];
    const pieces = new Map<string, SetupPiece>();
    const add = (build: string, root: string, fromGlass: boolean): void => {
      for (const id of ledger.keys(`${root}/pieces`)) {
        const piece = new SetupPiece(ledger, { build, id, path: `${root}/pieces/${id}`, fromGlass });
        pieces.set(piece.ref, piece);
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
