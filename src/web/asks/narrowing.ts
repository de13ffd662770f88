import type { AnswerLine } from '../../jobs/answers.ts';
import type { Verdict } from '../../check/answer.ts';
import { concernsSetup } from '../../check/concerns.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';

/** What the list is narrowed to; nothing narrows where a field is empty. */
export interface Narrowing {
  readonly words: string;
  readonly setup: string;
  readonly glass: string;
  readonly viewer: string;
  readonly shot: string;
  readonly verdicts: ReadonlySet<Verdict>;
}

export const WIDE: Narrowing = { words: '', setup: '', glass: '', viewer: '', shot: '', verdicts: new Set() };

export function narrowed(shoot: Pick<Shoot, 'setups' | 'shots'>, answers: Iterable<AnswerLine>, to: Narrowing): AnswerLine[] {
  const words = to.words.trim().toLowerCase().split(/\s+/).filter((word) => word !== '');
  return [...answers].filter(
    (answer) =>
      (to.setup === '' || concernsSetup(shoot, answer.subject, to.setup)) &&
      (['glass', 'viewer', 'shot'] as const).every((key) => to[key] === '' || answer.subject[key] === undefined || answer.subject[key] === to[key]) &&
      (to.verdicts.size === 0 || to.verdicts.has(answer.verdict)) &&
      holdsWords(answer, words),
  );
}

function holdsWords(answer: AnswerLine, words: readonly string[]): boolean {
  if (words.length === 0) return true;
  const text = `${answer.asks} ${answer.says} ${answer.about.join(' ')} ${answer.discipline} ${answer.verdict}`.toLowerCase();
  return words.every((word) => text.includes(word));
}

export const isNarrow = (one: Narrowing): boolean => one.verdicts.size > 0 || [one.words, one.setup, one.glass, one.viewer, one.shot].some((text) => text !== '');
