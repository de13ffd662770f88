import type { Assumption } from '../standards/Assumption.ts';
import { type Figure, assume } from '../shoot/ledger/figures.ts';
import type { Ledger } from '../shoot/ledger/Ledger.ts';
import type { PartView } from '../shoot/ledger/PartView.ts';
import { NotEntered } from './NotEntered.ts';
import type { Mend } from './answer.ts';
import { describeFigure } from './describeFigure.ts';

/** Whether cures are wanted; how far a finding is in doubt is asked without them, dozens of times over. */
export type Cures = 'with cures' | 'without cures';

/** What a question has in hand while it is asked: figures that are there, or the polite way out where they are not. */
export class Asking {
  readonly ledger: Ledger;
  readonly #cures: Cures;

  constructor(ledger: Ledger, cures: Cures = 'with cures') {
    this.ledger = ledger;
    this.#cures = cures;
  }

  /** Cures that take longer to work out than the answer itself: none, where nobody will read them. */
  cures(work: () => Mend[]): Mend[] {
    return this.#cures === 'with cures' ? work() : [];
  }

  /** A figure that must be there; without it the answer is unknown and names it. */
  figure(part: PartView, path: string): Figure {
    return this.figures(part, { one: path }).one;
  }

  /** Several at once, so that the answer names all that are missing. */
  figures<const Wanted extends Readonly<Record<string, string>>>(part: PartView, wanted: Wanted): { [Key in keyof Wanted]: Figure } {
    const found = Object.entries(wanted).map(([key, path]) => [key, part.figure(path), path] as const);
    const missing = found.filter(([, figure]) => figure === undefined).map(([, , path]) => describeFigure(part, path));
    if (missing.length > 0) throw new NotEntered(missing);
    return Object.fromEntries(found) as { [Key in keyof Wanted]: Figure };
  }

  /** A default of the program's, which the shoot may replace. */
  assume(assumption: Assumption): Figure {
    return assume(this.ledger, assumption);
  }

  /** A value of the shoot itself (a shot's stop, a day's temperature) that must be there. */
  entered<T>(path: string, says: string): T {
    const value = this.ledger.at(path);
    if (value === undefined) throw new NotEntered([{ path, says }]);
    return value as T;
  }
}
