import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { Checker } from '../../check/Checker.ts';
import { questions } from '../../check/questions/index.generated.ts';
import { FIRST_QUESTIONS, type FirstAnswers } from '../../shoot/new/firstQuestions.ts';
import { newShoot } from '../../shoot/new/newShoot.ts';
import { readAnswer } from '../../shoot/new/readAnswer.ts';
import { typicalParts } from '../../shoot/typical/typicalParts.ts';
import { type Typed, usualAnswers } from './usualAnswer.ts';

function failing(given: Typed): string[] {
  const typed = usualAnswers(given);
  const answers: Record<string, unknown> = {};
  for (const question of FIRST_QUESTIONS) {
    const read = readAnswer(question, typed[question.key], answers);
    if (!read.ok) return read.faults.map(({ message }) => message);
    answers[question.key] = read.value;
  }
  const found = new Checker(newShoot(answers as unknown as FirstAnswers), questions).answers();
  return found.filter(({ verdict, unknown }) => verdict === 'fails' || unknown === 'could not judge').map(({ question, says }) => `${question}: ${says}`);
}

test.each<Typed>([
  {}, { lens: 'anamorphic-2x-50' }, { lens: 'anamorphic-2x-35', director: 'monitor-17' }, { lens: 'anamorphic-1-33x-50', puller: 'none' }, { lens: 'lens-85', block: 'block-2x', director: 'monitor-24' },
  { body: 'body-super-35-tall', lens: 'anamorphic-2x-75', pack: 'pack-26v-98', director: 'monitor-24' }, { body: 'body-large-format', lens: 'anamorphic-1-8x-65', place: 'exterior' }, { link: 'cable', director: 'monitor-9' },
  { body: 'body-mirrorless-full-frame', pack: 'pack-7v-48', puller: 'none', operator: 'monitor-5-bright' }, { pack: 'pack-7v-32', puller: 'none' },
])('what nobody chose makes nothing fail: %o', (given) => expect(failing(given)).toEqual([]));

const choicesOf = (key: string, so: object = {}): readonly string[] => FIRST_QUESTIONS.find((one) => one.key === key)?.choices?.(so) ?? [];
/** Lenses go on the body with or without an adapter; the rest of the choice is free. */
const fitting = choicesOf('body').flatMap((body) => choicesOf('lens').filter((lens) => {
  const [has, wants] = [typicalParts[body]?.body?.mount, typicalParts[lens]?.lens?.mount];
  return has === wants || Object.values(typicalParts).some(({ mountAdapter }) => mountAdapter?.lensMount === wants && mountAdapter?.bodyMount === has);
}).map((lens) => ({ body, lens })));

property.prop([fc.constantFrom(...fitting), fc.constantFrom('none', 'monitor-13', 'monitor-17', 'monitor-24'), fc.constantFrom<Typed>({}, { puller: 'none' }), fc.constantFrom<Typed>({}, { pack: 'pack-14v-190' }, { pack: 'pack-26v-150' })], { numRuns: 25 })(
  'whatever is chosen, only what was chosen fails: a lens that no part of the sensor suits',
  (camera, director, puller, pack) => {
    expect(failing({ ...camera, ...puller, ...pack, director }).filter((says) => !says.startsWith('picture.coverage'))).toEqual([]);
  },
  60_000,
);
