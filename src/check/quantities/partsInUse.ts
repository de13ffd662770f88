import { wiring } from '../../assembly/lines/wiring.ts';
import { pieceSetting } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import { glassesOf } from '../subjects.ts';
import { countOf } from './kitCables.ts';

/** A part or copy of the kit and how many of it are wanted at once. */
export interface PartInUse {
  readonly part: PartView;
  /** The most that any one setup uses with any one glass, packs on plates and cables included. */
  readonly used: number;
  readonly have: number;
}

/** Everything in the kit, in its order; copies stand in for so many of their part. */
export function partsInUse(ledger: Ledger): readonly PartInUse[] {
  return ledger.cell('parts in use', () => {
    const most = new Map<string, number>();
    for (const setup of ledger.keys('setups')) {
      for (const glass of glassesOf(ledger, setup)) for (const [id, count] of usedIn(ledger, setup, glass)) most.set(id, Math.max(most.get(id) ?? 0, count));
    }
    for (const shot of ledger.keys('shots')) {
      const diopter = ledger.at(`shots/${shot}/diopter`) as string | undefined;
      if (diopter !== undefined) most.set(diopter, Math.max(most.get(diopter) ?? 0, 1));
    }
    const ids = [...ledger.keys('kit/parts'), ...ledger.keys('kit/copies')];
    const copiesOf = new Map<string, number>();
    for (const copy of ledger.keys('kit/copies')) {
      const of = ledger.at(`kit/copies/${copy}/of`) as string;
      copiesOf.set(of, (copiesOf.get(of) ?? 0) + 1);
    }
    return ids.map((id) => {
      const part = new PartView(ledger, id);
      const count = countOf(part);
      // A part's count is of all there are: those named as copies are listed on their own.
      return { part, used: most.get(id) ?? 0, have: part.copyPath === undefined ? Math.max(0, count - (copiesOf.get(id) ?? 0)) : 1 };
    });
  });
}

function usedIn(ledger: Ledger, setup: string, glass: string): Map<string, number> {
  const used = new Map<string, number>();
  const take = (id: string) => used.set(id, (used.get(id) ?? 0) + 1);
  const wired = wiring(ledger, setup, glass);
  for (const piece of wired.pieces.values()) {
    take(piece.part.id);
    for (const pack of pieceSetting(piece, 'packs') ?? []) take(pack);
  }
  for (const { cable, shared } of wired.lines) if (cable !== undefined && !shared) take(cable.id);
  return used;
}
