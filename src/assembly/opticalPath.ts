import type { Ledger } from '../shoot/ledger/Ledger.ts';
import type { FacetName } from '../shoot/schema/part.ts';
import { type SetupPiece, setupPieces } from './setupPieces.ts';

/** What the light passes, from the sensor outwards. What stands beside the stack is looked for only when asked for. */
export class OpticalPath {
  readonly body: SetupPiece | undefined;
  /** Path of the camera mode in the body's part: `body/modes/…`. */
  readonly mode: string;
  /** Pieces in the glass's own order, from the body outwards. */
  readonly stack: readonly SetupPiece[];
  readonly mountAdapters: readonly SetupPiece[];
  /** The lens that forms the image. */
  readonly lens: SetupPiece | undefined;
  readonly block: SetupPiece | undefined;
  readonly focuser: SetupPiece | undefined;
  readonly closeUps: readonly SetupPiece[];
  /** The piece whose ring is turned to focus: the focuser where there is one, else the outermost lens or block with a ring. */
  readonly focusedBy: SetupPiece | undefined;
  /** Pieces of the camera's build, the glass on it included. */
  readonly #own: readonly SetupPiece[];

  constructor(ledger: Ledger, setup: string, glass: string) {
    const pieces = setupPieces(ledger, setup, glass);
    const camera = ledger.at(`setups/${setup}/camera`) as string;
    const order = (ledger.at(`glasses/${glass}/stack`) ?? []) as readonly string[];
    const bodyId = ledger.at(`builds/${camera}/camera`) as string | undefined;
    this.#own = [...pieces.values()].filter((piece) => piece.build === camera);
    this.stack = order.flatMap((id) => pieces.get(`${camera}/${id}`) ?? []);
    this.body = bodyId === undefined ? this.#own.find((piece) => piece.part.has('body')) : pieces.get(`${camera}/${bodyId}`);
    this.mode = `body/modes/${ledger.at(`setups/${setup}/mode`) as string}`;
    const withFacet = (facet: FacetName) => this.stack.filter((piece) => piece.part.has(facet));
    this.mountAdapters = withFacet('mountAdapter');
    this.lens = withFacet('lens')[0];
    this.block = withFacet('block')[0];
    this.focuser = withFacet('focuser').at(-1);
    this.closeUps = withFacet('closeUp');
    this.focusedBy = this.focuser ?? withFacet('focus').at(-1);
  }

  /** Filters on the glass or in the build. */
  get filters(): readonly SetupPiece[] {
    return this.#own.filter((piece) => piece.part.has('filter'));
  }

  /** On the glass or on the build's rods. */
  get matteBox(): SetupPiece | undefined {
    return this.#own.find((piece) => piece.part.has('matteBox'));
  }
}

export function opticalPath(ledger: Ledger, setup: string, glass: string): OpticalPath {
  return ledger.cell(`optical path|${setup}|${glass}`, () => new OpticalPath(ledger, setup, glass));
}
