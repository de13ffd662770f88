import type { Edit } from '../shoot/edit/Edit.ts';
import type { Amount } from '../units/print.ts';

/** What the day will say of it. `pending`: a studied question that has not run. */
export type Verdict = 'good' | 'tight' | 'fails' | 'unknown' | 'pending';

export const DISCIPLINES = ['picture', 'sight', 'lines', 'power', 'space', 'focus', 'hold', 'balance', 'swap', 'carry'] as const;
export type Discipline = (typeof DISCIPLINES)[number];

/** What an answer is about, by ids. Together with the question it is the answer's key. */
export interface Subject {
  readonly build?: string;
  readonly setup?: string;
  readonly glass?: string;
  readonly shot?: string;
  readonly viewer?: string;
  readonly person?: string;
  readonly day?: string;
  /** `build/piece`. */
  readonly piece?: string;
  readonly joint?: string;
  readonly line?: string;
  /** Anything finer: a pair, a stage, a meridian. */
  readonly at?: string;
}

/** One side of the sum: what is needed, what there is, and where that comes from. */
export interface Side {
  readonly amount: Amount;
  /** The figure's origin in a few words: "0.42 at −10 °C (measured) × 1.5". */
  readonly from: string;
  /** How the side reads where "needs" or "has" would mislead: "off by" against "allowed". */
  readonly word?: string;
}

/** One step of the working: words, and the number they lead to. */
export interface Step {
  readonly says: string;
  readonly amount?: Amount;
}

/** A cure: an edit where the file can make it, what it costs, and the use it leads to once tried. */
export interface Mend {
  readonly says: string;
  readonly edit?: Edit;
  /** Cost and side effects. */
  readonly costs?: string;
  /** Use after it, computed. */
  readonly use?: number;
}

/** A figure that is not there, and the bench measurement that gives it. */
export interface Missing {
  readonly path: string;
  readonly says: string;
  readonly measure?: string;
}

/** A curve to draw beside the working. */
export interface Curve {
  readonly title: string;
  readonly x: { readonly says: string; readonly unit: Amount['unit']; readonly at: readonly number[] };
  readonly lines: readonly { readonly says: string; readonly unit: Amount['unit']; readonly at: readonly number[] }[];
}

/** What a question found, before the machine adds key, names and what it rests on. */
export interface Judgement {
  /** The finding in one sentence, with names of parts, never ids. */
  readonly says: string;
  readonly verdict: Exclude<Verdict, 'pending'>;
  /** Demand against capacity on the scale from 0 to 2 and beyond; absent where the answer is yes or no. */
  readonly use?: number;
  readonly needs?: Side;
  readonly has?: Side;
  readonly steps?: readonly Step[];
  readonly mends?: readonly Mend[];
  /** Cautions and limits that belong to this answer. */
  readonly notes?: readonly string[];
  readonly curve?: Curve;
  readonly missing?: readonly Missing[];
}

export interface Answer extends Omit<Judgement, 'verdict'> {
  readonly verdict: Verdict;
  readonly key: string;
  readonly question: string;
  readonly discipline: Discipline;
  /** The question in words. */
  readonly asks: string;
  readonly subject: Subject;
  /** Names of what it is about, widest first. */
  readonly about: readonly string[];
  readonly sources: readonly string[];
  /** Why it is unknown: something is not entered yet, or it could not be judged. */
  readonly unknown?: 'not entered' | 'could not judge';
}
