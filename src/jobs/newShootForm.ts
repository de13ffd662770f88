import type { Outcome } from '../faults/Fault.ts';
import { FIRST_QUESTIONS, type FirstAnswers, type FirstQuestion } from '../shoot/new/firstQuestions.ts';
import { type Typed, fitting, parsed, usualAnswers } from '../propose/first/usualAnswer.ts';
import { newShoot } from '../shoot/new/newShoot.ts';
import { readAnswer } from '../shoot/new/readAnswer.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { typicalParts } from '../shoot/typical/typicalParts.ts';

/** One of the five-minute questions as a form shows it. */
export interface FormRow extends Pick<FirstQuestion, 'key' | 'asks' | 'kind'> {
  readonly answer: string;
  readonly choices?: readonly { readonly id: string; readonly name: string }[];
}

export type { Typed };

/** The questions, each with its answer so far or the usual one, and choices that follow from the answers before. */
export function newShootForm(typed: Typed): FormRow[] {
  const answers = usualAnswers(serving(fitting(typed)));
  const so: Record<string, string> = {};
  return FIRST_QUESTIONS.map((question) => {
    const { key, asks, kind } = question;
    const ids = question.choices?.(so as never).filter((id) => question.unfit?.(id, so as never) === undefined);
    const answer = answers[key];
    so[key] = answer;
    const mode = key === 'mode' ? (typicalParts[so['body'] ?? '']?.body?.modes ?? {}) : {};
    const nameOf = (id: string) => mode[id]?.name ?? typicalParts[id]?.name ?? typicalParts[`transmitter-${id}`]?.name ?? id;
    return { key, asks, kind, answer, ...(ids === undefined ? {} : { choices: ids.map((id) => ({ id, name: nameOf(id) })) }) };
  });
}

/** Answers less those that do not serve with the rest: they are no longer among the choices. */
function serving(typed: Typed): Typed {
  const so = parsed(typed);
  return Object.fromEntries(FIRST_QUESTIONS.flatMap(({ key, unfit }) => (typed[key] === undefined || unfit?.(typed[key], so) !== undefined ? [] : [[key, typed[key]]])));
}

/** The shoot those answers make, or what is amiss in them. */
export function shootFromForm(typed: Typed): Outcome<Shoot> {
  const read = newShootForm(typed).map(({ key, answer }) => {
    const question = FIRST_QUESTIONS.find((one) => one.key === key);
    return { key, outcome: question === undefined ? undefined : readAnswer(question, answer) };
  });
  const faults = read.flatMap(({ key, outcome }) => (outcome?.ok === false ? outcome.faults.map((fault) => ({ ...fault, path: key })) : []));
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, value: newShoot(Object.fromEntries(read.map(({ key, outcome }) => [key, outcome?.ok === true ? outcome.value : undefined])) as unknown as FirstAnswers), warnings: [] };
}
