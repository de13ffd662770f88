import { Checker } from '../../check/Checker.ts';
import { questions } from '../../check/questions/index.generated.ts';
import { FIRST_QUESTIONS, type FirstAnswers, type FirstQuestion } from '../../shoot/new/firstQuestions.ts';
import { newShoot } from '../../shoot/new/newShoot.ts';
import { readAnswer } from '../../shoot/new/readAnswer.ts';

/** Answers as they are typed. */
export type Typed = Readonly<Partial<Record<keyof FirstAnswers, string>>>;

/**
 * All answers, those that are not given as usual. The usual ones are gone through twice: what comes late, such as the packs, may not
 * suit what was taken for usual early.
 */
export function usualAnswers(given: Typed): Record<keyof FirstAnswers, string> {
  const once = filled(given, (question, so) => usualAnswer(question, so));
  return filled(given, (question, so) => usualAnswer(question, { ...once, ...so }, once[question.key]));
}

/**
 * The answer to take for usual where none is given: the plain one, unless it would make something fail that another of the choices
 * does not. A first shoot should fail for what somebody chose, never for what nobody did.
 */
export function usualAnswer(question: FirstQuestion, so: Typed, plain = question.usual(parsed(so))): string {
  const { bearsOn, choices, key } = question;
  if (bearsOn === undefined || question.arises?.(parsed(so)) === false) return plain;
  const failing = (answer: string): number => failsWith({ ...so, [key]: answer }, bearsOn);
  if (question.kind === 'number') return leastThatHolds(Number(plain), failing);
  const among = choices?.(parsed(so)) ?? [];
  const others = among.filter((answer) => answer !== plain && (answer !== 'none' || question.dispensable === true));
  const tried = [...(among.includes(plain) ? [plain] : []), ...others.toSorted((one, other) => Number(one === 'none') - Number(other === 'none'))];
  if (plain === 'none' || tried.length < 2) return tried[0] ?? plain;
  let [best, least] = [plain, Infinity];
  for (const answer of tried) {
    const fails = failing(answer);
    if (fails === 0) return answer;
    if (fails < least) [best, least] = [answer, fails];
  }
  return best;
}

/** A first shoot wants no more of anything than this. */
const MOST = 60;

/** The least count, from the usual one up, with which nothing fails; the usual one where no count mends it. */
function leastThatHolds(from: number, failing: (answer: string) => number): string {
  if (failing(String(from)) === 0) return String(from);
  if (failing(String(MOST)) > 0) return String(from);
  let [short, enough] = [from, MOST];
  while (enough - short > 1) {
    const middle = Math.floor((short + enough) / 2);
    if (failing(String(middle)) > 0) short = middle;
    else enough = middle;
  }
  return String(enough);
}

/** How badly things fail once the rest is answered plainly: their uses added up; 0 where nothing does. */
function failsWith(so: Typed, bearsOn: readonly string[]): number {
  const asked = questions.filter(({ id }) => bearsOn.some((one) => id === one || id.startsWith(`${one}.`)));
  const answers = parsed(filled(fitting(so), (question, before) => question.usual(parsed(before)))) as FirstAnswers;
  const failing = new Checker(newShoot(answers), asked).answers().filter(({ verdict }) => verdict === 'fails');
  return failing.reduce((sum, { use = 2 }) => sum + Math.min(use, 10), 0);
}

/** Answers less those that the ones before them have ruled out, such as a part of the sensor that another body has. */
export function fitting(typed: Typed): Typed {
  const so: Partial<Record<keyof FirstAnswers, string>> = {};
  for (const { key, choices } of FIRST_QUESTIONS) {
    const answer = typed[key];
    if (answer !== undefined && (choices === undefined || choices(parsed(so)).includes(answer))) so[key] = answer;
  }
  return so;
}

/** Answers in the order in which they are asked, each from those before. */
function filled(given: Typed, answer: (question: FirstQuestion, so: Typed) => string): Record<keyof FirstAnswers, string> {
  const so: Partial<Record<keyof FirstAnswers, string>> = {};
  for (const question of FIRST_QUESTIONS) so[question.key] = given[question.key] ?? answer(question, so);
  return so as Record<keyof FirstAnswers, string>;
}

/** What is typed, as far as it can be read. */
export function parsed(typed: Typed): Partial<FirstAnswers> {
  return Object.fromEntries(
    FIRST_QUESTIONS.flatMap((question) => {
      const answer = typed[question.key];
      const read = answer === undefined ? undefined : readAnswer(question, answer);
      return read?.ok === true ? [[question.key, read.value]] : [];
    }),
  );
}
