import type { Answer, Verdict } from './answer.ts';

const RANK: Readonly<Record<Verdict, number>> = { fails: 0, unknown: 1, tight: 2, pending: 3, good: 4 };

/** Worst first: fails, then what could not be judged, tight, pending, good; within one verdict the deepest use first. */
export function worstFirst(a: Answer, b: Answer): number {
  return RANK[a.verdict] - RANK[b.verdict] || depth(b) - depth(a) || a.key.localeCompare(b.key, 'en');
}

/** A no without a scale counts as the deepest. */
const depth = ({ use, verdict }: Answer): number => use ?? (verdict === 'fails' ? Infinity : 0);

/** One question with all its answers, worst first. */
export interface QuestionGroup {
  readonly question: string;
  readonly asks: string;
  readonly answers: readonly Answer[];
}

/** Answers by question, the question with the worst answer first. Answers that wait for figures are kept out: see `waiting`. */
export function byQuestion(answers: readonly Answer[]): QuestionGroup[] {
  const groups = new Map<string, Answer[]>();
  for (const answer of answers) {
    if (answer.unknown === 'not entered') continue;
    const group = groups.get(answer.question);
    if (group === undefined) groups.set(answer.question, [answer]);
    else group.push(answer);
  }
  const sorted = [...groups.values()].map((group) => group.toSorted(worstFirst) as [Answer, ...Answer[]]);
  return sorted.toSorted(([a], [b]) => worstFirst(a, b)).map((group) => ({ question: group[0].question, asks: group[0].asks, answers: group }));
}

/** Answers that wait for something to be entered; apart from what could not be judged. */
export const waiting = (answers: readonly Answer[]): Answer[] => answers.filter(({ unknown }) => unknown === 'not entered');

/** How many answers have each verdict; what is not entered yet is counted apart from what could not be judged. */
export function countVerdicts(answers: readonly Answer[]): Readonly<Record<Verdict | 'not entered', number>> {
  const counts = { good: 0, tight: 0, fails: 0, unknown: 0, pending: 0, 'not entered': 0 };
  for (const { verdict, unknown } of answers) counts[unknown === 'not entered' ? unknown : verdict] += 1;
  return counts;
}

/** Findings that say the same of several subjects are one finding: the answers behind each, worst first. */
export const sameFindings = (answers: readonly Answer[]): Answer[][] => grouped(answers, ({ verdict, says, use }) => `${verdict}|${says}|${use?.toPrecision(6) ?? ''}`);

/** One cause with different numbers: what says the same of several subjects, each group with those of like numbers together. */
export const sameCauses = (answers: readonly Answer[]): Answer[][][] => grouped(answers, ({ verdict, says }) => `${verdict}|${says}`).map(sameFindings);

function grouped(answers: readonly Answer[], keyOf: (answer: Answer) => string): Answer[][] {
  const groups = new Map<string, Answer[]>();
  for (const answer of answers) {
    const key = keyOf(answer);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [answer]);
    else group.push(answer);
  }
  return [...groups.values()];
}
