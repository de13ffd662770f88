import type { Outcome } from '../faults/Fault.ts';
import { FIRST_QUESTIONS, type FirstAnswers, type FirstQuestion } from '../shoot/new/firstQuestions.ts';
import { newShoot } from '../shoot/new/newShoot.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { typicalParts } from '../shoot/typical/typicalParts.ts';
import { readLength } from '../units/length.ts';

/** One of the five-minute questions as a form shows it. */
export interface FormRow extends Pick<FirstQuestion, 'key' | 'asks' | 'kind'> {
  readonly answer: string;
  readonly choices?: readonly { readonly id: string; readonly name: string }[];
}

export type Typed = Readonly<Partial<Record<keyof FirstAnswers, string>>>;

/** The questions, each with its answer so far or the usual one, and choices that follow from the answers before. */
export function newShootForm(typed: Typed): FormRow[] {
  const so: Record<string, string> = {};
  return FIRST_QUESTIONS.map((question) => {
    const ids = question.choices?.(so as never);
    const given = typed[question.key];
    const fits = given !== undefined && (ids === undefined || ids.includes(given));
    const usual = question.usual(so as never);
    const answer = fits ? given : ids === undefined || ids.includes(usual) ? usual : (ids[0] ?? '');
    so[question.key] = answer;
    const { key, asks, kind } = question;
    const mode = key === 'mode' ? (typicalParts[so['body'] ?? '']?.body?.modes ?? {}) : {};
    const nameOf = (id: string) => mode[id]?.name ?? typicalParts[id]?.name ?? typicalParts[`transmitter-${id}`]?.name ?? id;
    return { key, asks, kind, answer, ...(ids === undefined ? {} : { choices: ids.map((id) => ({ id, name: nameOf(id) })) }) };
  });
}

/** The shoot those answers make, or what is amiss in them. */
export function shootFromForm(typed: Typed): Outcome<Shoot> {
  const read = newShootForm(typed).map(({ key, kind, answer }) => {
    if (kind === 'length') {
      const length = readLength(answer);
      return { key, value: length.ok ? length.value : undefined, fault: length.ok ? undefined : length.faults[0] };
    }
    if (kind !== 'number') return { key, value: answer, fault: answer.trim() === '' ? { path: key, message: 'Nothing is entered.' } : undefined };
    const value = Number(answer.replace(',', '.'));
    return { key, value, fault: Number.isFinite(value) && value > 0 ? undefined : { path: key, message: `"${answer}" is not a number above zero.` } };
  });
  const faults = read.flatMap(({ key, fault }) => (fault === undefined ? [] : { ...fault, path: key }));
  if (faults.length > 0) return { ok: false, faults };
  const { focuserToSensorMm, ...answers } = Object.fromEntries(read.map(({ key, value }) => [key, value])) as unknown as FirstAnswers;
  return { ok: true, value: newShoot(focuserToSensorMm !== undefined && focuserToSensorMm > 0 ? { ...answers, focuserToSensorMm } : answers), warnings: [] };
}
