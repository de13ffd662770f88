import type { RigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Judgement } from '../answer.ts';
import { cannotJudge } from '../judge.ts';
import type { SetupGlass } from '../subjects.ts';
import { listed } from './listed.ts';

/** Pieces that hang together, but on nothing else: no sum of forces can be made before something holds them. */
export function heldByNothing(ledger: Ledger, { setup, glass }: SetupGlass, { network, pieceOf }: RigNetwork): Judgement {
  const pieces = setupPieces(ledger, setup, glass);
  const nameOf = (body: string) => pieces.get(pieceOf(body))?.name ?? body;
  const sets = network.freeMotions.map(({ bodies, says }) => ({ names: [...new Set(bodies.map(nameOf))], says }));
  const all = [...new Set(sets.flatMap(({ names }) => names))];
  return cannotJudge(`Nothing in the drawing holds ${listed(all)} to the rest, so no forces can be worked out.`, sets.map(({ names, says }) => ({ says: `${listed(names)} can move freely, ${says}` })), ['Enter the joint that holds it, or take it out of the build.']);
}
