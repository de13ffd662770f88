import { setupPieces } from '../../assembly/setupPieces.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { SetupGlass } from '../subjects.ts';
import { listed } from './listed.ts';

/** Pieces of a build that have no place: an answer that goes by places must say that it leaves them out. */
export function unplacedNote(ledger: Ledger, { setup, glass }: SetupGlass, build: string): string[] {
  const { places } = placeSetup(ledger, setup, glass);
  const left = [...setupPieces(ledger, setup, glass).values()].filter((piece) => piece.build === build && !places.has(piece.ref));
  return left.length === 0 ? [] : [`Has no place yet, and is left out: ${listed(left.map(({ name }) => name))}.`];
}
