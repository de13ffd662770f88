import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { videoTrace } from '../../assembly/lines/videoTrace.ts';
import { Checker } from '../../check/Checker.ts';
import { questions } from '../../check/questions/index.generated.ts';
import { FIRST_QUESTIONS, type FirstAnswers } from '../../shoot/new/firstQuestions.ts';
import { newShoot } from '../../shoot/new/newShoot.ts';
import { readAnswer } from '../../shoot/new/readAnswer.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { typicalParts } from '../../shoot/typical/typicalParts.ts';
import { type Typed, usualAnswers } from './usualAnswer.ts';

const choicesOf = (key: string): readonly string[] => FIRST_QUESTIONS.find((one) => one.key === key)?.choices?.({}) ?? [];

/** Answers as the command reads them; what is not given is the plain usual one. */
function read(typed: Typed): FirstAnswers {
  const answers: Record<string, unknown> = {};
  for (const question of FIRST_QUESTIONS) {
    const found = readAnswer(question, typed[question.key] ?? question.usual(answers), answers);
    if (!found.ok) throw new Error(`${question.key}: ${found.faults.map(({ message }) => message).join(' ')}`);
    answers[question.key] = found.value;
  }
  return answers as unknown as FirstAnswers;
}

/** One screen of each set of picture sockets: the others are wired alike. */
const screens = ['none', ...new Map(choicesOf('director').filter((id) => id !== 'none').map((id) => [JSON.stringify(Object.values(typicalParts[id]?.ports ?? {}).map(({ video }) => video)), id])).values()];

function reachesAll(given: Typed & { operator: string; puller: string; director: string }): boolean {
  const { into } = videoTrace(new Ledger(newShoot(read(given))), 'first', 'first');
  const wanted = [given.operator, given.puller, given.director].filter((one) => one !== 'none').length;
  const lit = [...into.values()].filter(({ picture }) => picture !== undefined);
  return lit.length === into.size && lit.filter(({ piece }) => piece.part.has('screen')).length === wanted;
}

test('whatever body, link and screens are chosen, a picture reaches all of them, and everything that passes it on', () => {
  const viewed = screens.flatMap((operator) => screens.flatMap((puller) => screens.map((director) => ({ operator, puller, director }))));
  const all = choicesOf('body').flatMap((body) => choicesOf('link').flatMap((link) => viewed.map((seen) => ({ body, link, ...seen }))));
  expect(all.length).toBe(choicesOf('body').length * choicesOf('link').length * 3 ** 3);
  expect(all.filter((given) => !reachesAll(given))).toEqual([]);
}, 120_000);

/** What a screen or link that is chosen cannot do, or is too heavy for. */
const CHOSEN = /^(?:sight\.(?:delay|focus|size|contrast|resolution|mode)|picture\.|carry\.lift)/;

property.prop(
  [fc.constantFrom(...choicesOf('body')), fc.constantFrom(...choicesOf('link')), fc.constantFrom(...choicesOf('operator')), fc.constantFrom(...choicesOf('puller')), fc.constantFrom(...choicesOf('director')), fc.constantFrom<Typed>({}, { pack: 'pack-26v-150' }, { motor: 'none' })], { numRuns: 25 },
)('whatever is chosen, nothing fails but what that screen or link cannot do, and nobody is without a picture', (body, link, operator, puller, director, more) => {
  const found = new Checker(newShoot(read(usualAnswers({ body, link, operator, puller, director, ...more }))), questions).answers();
  const failing = found.filter(({ verdict, unknown }) => verdict === 'fails' || unknown === 'could not judge').map(({ question, says }) => `${question}: ${says}`);
  expect(failing.filter((one) => !CHOSEN.test(one) || one.includes('No picture'))).toEqual([]);
}, 120_000);
