import type { Ledger } from '../shoot/ledger/Ledger.ts';
import type { Discipline, Judgement, Subject } from './answer.ts';
import type { Asking } from './Asking.ts';

/** One thing the day asks. A file of its own in the room of its discipline; the machine finds it there. */
export interface Question<S extends Subject = Subject> {
  /** Room and file name: `picture.frame`. */
  readonly id: string;
  /** The question in words, ending in a question mark. */
  readonly asks: string;
  /** `immediate`: arithmetic, part of every check. `studied`: simulation or search, run as a job. */
  readonly kind: 'immediate' | 'studied';
  /** Why it matters on the day, how it is worked out, what it leaves out: several sentences, for `explain`. */
  readonly explains: string;
  /** Published sources, or "common practice". */
  readonly sources: readonly string[];
  /** Everything in this shoot it arises for. Reads through the ledger only. */
  subjects(ledger: Ledger): readonly S[];
  /** The judgement, or `null` where on a closer look it does not arise. Throws `NotEntered` (through `Asking`) for want of a figure. */
  ask(asking: Asking, subject: S): Judgement | null;
}

/** A question of any subject, for lists of them. */
export type AnyQuestion = Question<Subject>;

/** Declares a question. */
export function question<S extends Subject>(definition: Question<S>): Question<S> {
  return definition;
}

/** The discipline is the room. */
export function disciplineOf(id: string): Discipline {
  return id.slice(0, id.indexOf('.')) as Discipline;
}
