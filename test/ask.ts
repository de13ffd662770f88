import type { Answer } from '../src/check/answer.ts';
import { Checker } from '../src/check/Checker.ts';
import type { AnyQuestion } from '../src/check/question.ts';
import type { Shoot } from '../src/shoot/schema/shoot.ts';

/** Every answer of one question to a shoot; studied questions are run. */
export function askAll(question: AnyQuestion, shoot: Shoot): Answer[] {
  const checker = new Checker(shoot, [question]);
  return checker.answers().flatMap((answer) => (answer.verdict === 'pending' ? (checker.study(answer.key) ?? []) : answer));
}

/** The one answer of a question, or the first whose key holds `part`. */
export function askOne(question: AnyQuestion, shoot: Shoot, part = ''): Answer {
  const found = askAll(question, shoot).find(({ key }) => key.includes(part));
  if (found === undefined) throw new Error('The question did not arise.');
  return found;
}
