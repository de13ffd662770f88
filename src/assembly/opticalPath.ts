import type { Ledger } from '../shoot/ledger/Ledger.ts';
import type { FacetName } from '../shoot/schema/part.ts';
import { type SetupPiece, setupPieces } from './setupPieces.ts';

/** What the light passes, from the sensor outwards. */
export interface OpticalPath {
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
  readonly filters: readonly SetupPiece[];
  /** On the glass or on the build's rods. */
  readonly matteBox: SetupPiece | undefined;
  /** The piece whose ring is turned to focus: the focuser where there is one, else the lens or block with a ring. */
  readonly focusedBy: SetupPiece | undefined;
}

export function opticalPath(ledger: Ledger, setup: string, glass: string): OpticalPath {
  return ledger.cell(`optical path|${setup}|${glass}`, () => {
    const pieces = setupPieces(ledger, setup, glass);
    const camera = ledger.at(`setups/${setup}/camera`) as string;
    const order = (ledger.at(`glasses/${glass}/stack`) ?? []) as readonly string[];
    const stack = order.flatMap((id) => pieces.get(`${camera}/${id}`) ?? []);
    const withFacet = (facet: FacetName) => stack.filter((piece) => piece.part.has(facet));
    const bodyId = ledger.at(`builds/${camera}/camera`) as string | undefined;
    const own = [...pieces.values()].filter((piece) => piece.build === camera);
    const focuser = withFacet('focuser').at(-1);
    return {
      body: bodyId === undefined ? own.find((piece) => piece.part.has('body')) : pieces.get(`${camera}/${bodyId}`),
      mode: `body/modes/${ledger.at(`setups/${setup}/mode`) as string}`,
      stack,
      mountAdapters: withFacet('mountAdapter'),
      lens: withFacet('lens')[0],
      block: withFacet('block')[0],
      focuser,
      closeUps: withFacet('closeUp'),
      filters: own.filter((piece) => piece.part.has('filter')),
      matteBox: own.find((piece) => piece.part.has('matteBox')),
      focusedBy: focuser ?? withFacet('focus').at(-1),
    };
  });
}
