import { carrierKind, carriersFor } from '../../assembly/hold/carriers.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Missing } from '../answer.ts';
import { nameAt } from '../nameAt.ts';
import { listed } from './listed.ts';

/** What is to be entered where none of a build's pieces holds it up as its purpose asks, and the finding behind its name; `undefined` where one does, or none need. */
export function nothingBears(ledger: Ledger, build: string, own: readonly SetupPiece[]): (Missing & { readonly finding: string }) | undefined {
  const bear = carriersFor(ledger.at(`builds/${build}/purpose`))?.bear ?? [];
  const inHand = bear.includes('handles') && own.some(({ part }) => part.kind === 'handle');
  if (bear.length === 0 || inHand || own.some((piece) => bear.includes(carrierKind(piece) ?? ''))) return undefined;
  const dumb = own.filter((piece) => carrierKind(piece) === undefined && bear.includes(piece.part.kind));
  const [first] = dumb;
  if (first !== undefined) return { path: `${first.part.path}/carrier`, says: `what ${first.name} carries as ("carrier" with its "kind")`, finding: `stands on nothing that says it carries: ${listed(dumb.map(({ name }) => name))} ${dumb.length === 1 ? 'has' : 'have'} no "carrier" entered.` };
  return { path: `builds/${build}/pieces`, says: `what ${nameAt(ledger, 'builds', build)} stands on (${anyOf(bear)}) among its pieces`, finding: `stands on nothing: no ${anyOf(bear)} is among its pieces.` };
}

/** "head, legs or stand". */
const anyOf = (kinds: readonly string[]): string => (kinds.length === 1 ? (kinds[0] ?? '') : `${kinds.slice(0, -1).join(', ')} or ${kinds.at(-1) ?? ''}`);
