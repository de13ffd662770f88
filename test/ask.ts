import type { Answer } from '../src/check/answer.ts';
import { Checker } from '../src/check/Checker.ts';
import type { Question } from '../src/check/question.ts';
import type { Shoot } from '../src/shoot/schema/shoot.ts';

/** Every answer of one question to a shoot; studied questions are run. */
export function askAll(question: unknown, shoot: Shoot): Answer[] {
  const checker = new Checker(shoot, [question as Question]);
  return checker.answers().flatMap((answer) => (answer.verdict === 'pending' ? (checker.study(answer.key) ?? []) : answer));
}

/** The one answer of a question, or the first whose key holds `part`. */
export function askOne(question: unknown, shoot: Shoot, part = ''): Answer {
  const found = askAll(question, shoot).find(({ key }) => key.includes(part));
  if (found === undefined) throw new Error('The question did not arise.');
  return found;
}
