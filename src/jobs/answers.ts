import type { Answer } from '../check/answer.ts';
import type { AnyQuestion } from '../check/question.ts';
import type { Figure } from '../shoot/ledger/figures.ts';

/** What a list of answers shows of each: everything but its working. */
export type AnswerLine = Omit<Answer, 'steps' | 'mends' | 'notes' | 'curve' | 'missing'> & {
  /** Paths of figures it waits for. */
  readonly waitsFor?: readonly string[];
};

/** A figure an answer rests on, named for people. */
export interface NamedFigure extends Figure {
  /** What it is: "image circle". */
  readonly says: string;
  /** Whose it is: a part, a shot, a day; empty for a default of the program's. */
  readonly of: string;
  /** For a default: where it comes from. */
  readonly source?: string;
  /** A plain number, not in doubt. */
  readonly plain?: true;
}

/** One answer with all that stands behind it. */
export interface Working {
  readonly answer: Answer;
  readonly explains: string;
  readonly kind: AnyQuestion['kind'];
  readonly rests: readonly NamedFigure[];
}

/** The line of an answer, for the list. */
export function lineOf(answer: Answer): AnswerLine {
  const { steps: _steps, mends: _mends, notes: _notes, curve: _curve, missing, ...line } = answer;
  return missing === undefined ? line : { ...line, waitsFor: missing.map(({ path }) => path) };
}
