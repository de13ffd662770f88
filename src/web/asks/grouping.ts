import { type Answer, type Discipline, DISCIPLINES } from '../../check/answer.ts';
import { byQuestion, sameFindings, worstFirst } from '../../check/ranking.ts';
import type { AnswerLine } from '../../jobs/answers.ts';

/** Answers that say the same of several subjects: the worst one, and how many there are. */
export interface FindingGroup {
  readonly first: Answer;
  readonly all: readonly Answer[];
}

export interface QuestionGroup {
  readonly question: string;
  readonly asks: string;
  readonly worst: Answer;
  readonly answers: readonly Answer[];
  readonly findings: readonly FindingGroup[];
}

export interface DisciplineGroup {
  readonly discipline: Discipline;
  readonly questions: readonly QuestionGroup[];
}

/** Answers by discipline in the order of the job, within each the worst question first. What waits for figures is apart. */
export function byDiscipline(answers: readonly AnswerLine[]): DisciplineGroup[] {
  const groups = asked(answers);
  return DISCIPLINES.map((discipline) => ({ discipline, questions: groups.filter(({ worst }) => worst.discipline === discipline) })).filter(({ questions }) => questions.length > 0);
}

function asked(answers: readonly AnswerLine[]): QuestionGroup[] {
  return byQuestion(answers).flatMap(({ question, asks, answers: own }) => {
    const [worst] = own;
    return worst === undefined ? [] : { question, asks, worst, answers: own, findings: findingsOf(own) };
  });
}

function findingsOf(answers: readonly Answer[]): FindingGroup[] {
  return sameFindings(answers).flatMap((all) => (all[0] === undefined ? [] : { first: all[0], all }));
}

/** Answers that wait for figures, by what they wait for. */
export function waitingFor(answers: readonly AnswerLine[]): AnswerLine[] {
  return answers.filter(({ unknown }) => unknown === 'not entered').toSorted(worstFirst);
}
