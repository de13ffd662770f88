import { existsSync } from 'node:fs';
import { Command } from 'commander';
import { questions } from '../../check/questions/index.generated.ts';
import { Checker } from '../../check/Checker.ts';
import { measureFirst } from '../../check/measureFirst.ts';
import { type Typed, usualAnswer, usualAnswers } from '../../propose/first/usualAnswer.ts';
import { FIRST_QUESTIONS, type FirstAnswers, type FirstQuestion } from '../../shoot/new/firstQuestions.ts';
import { newShoot } from '../../shoot/new/newShoot.ts';
import { readAnswer } from '../../shoot/new/readAnswer.ts';
import { checkShoot } from '../../shoot/read.ts';
import { writeShoot } from '../../shoot/write.ts';
import { summaryLine } from '../checkText.ts';
import { classesText } from '../classesText.ts';
import { mustBeNamed, writeWhole } from '../files.ts';
import { paintFor } from '../paint.ts';
import { Refusal, valueOrRefuse } from '../Refusal.ts';
import type { World } from '../World.ts';
import { hanging, wrap } from '../wrap.ts';

export const summary = 'Makes a first shoot of typical parts from a few answers';

export function command(world: World): Command {
  const made = new Command('new').description(`${summary}. What is not given as an option is asked, or takes its usual value where nobody can be asked.`).usage('[options] <file>').argument('[file]', 'the shoot file to write: it must not exist yet')
    .option('--classes [kind]', 'list the typical classes of parts by kind, and write nothing');
  for (const { key, asks } of FIRST_QUESTIONS) made.option(`--${optionOf(key)} <answer>`, asks);
  made.addHelpText('after', `\nAnswers to choose from:\n${choicesText()}\n`);
  return made.action((file: string | undefined, { classes, ...options }: Record<string, string> & { classes?: string | true }) => {
    if (classes !== undefined) return world.out(classesText(classes === true ? undefined : classes));
    if (file === undefined) throw new Refusal('', [{ path: '', message: 'A file to write is needed.', cure: 'setworthy new first.shoot.json' }]);
    return makeNew(world, file, options);
  });
}

const optionOf = (key: string): string => key.replace(/Mm$|Px$/, '').replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
const camel = (key: string): string => key.replace(/Mm$|Px$/, '');

/** Every class that answers a question; the modes by the body that has them. */
function choicesText(): string {
  const bodies = FIRST_QUESTIONS.find(({ key }) => key === 'body')?.choices?.({}) ?? [];
  const told = FIRST_QUESTIONS.flatMap(({ key, choices }) => {
    const among = key === 'mode' ? bodies.map((body) => `${choices?.({ body }).join(' or ')} (${body})`) : (choices?.({}) ?? []);
    return among.length === 0 ? [] : wrap(`--${optionOf(key)}: ${among.join(', ')}`, 80, '    ').slice(2);
  });
  return told.join('\n');
}

async function makeNew(world: World, file: string, options: Readonly<Record<string, string>>): Promise<void> {
  mustBeNamed(file);
  if (existsSync(file)) throw new Refusal(file, [{ path: '', message: 'This file exists already; it was not touched.', cure: 'Give another name.' }]);
  const given = Object.fromEntries(FIRST_QUESTIONS.flatMap(({ key }) => (options[camel(key)] === undefined ? [] : [[key, options[camel(key)]]]))) as Typed;
  const typed = world.ask === undefined ? usualAnswers(given) : await asked(world, world.ask, given);
  const answers: Partial<Record<keyof FirstAnswers, unknown>> = {};
  for (const question of FIRST_QUESTIONS) answers[question.key] = valueOrRefuse(readAnswer(question, typed[question.key], answers as Partial<FirstAnswers>), `--${optionOf(question.key)}`);
  const shoot = valueOrRefuse(checkShoot(newShoot(answers as FirstAnswers)), file);
  writeWhole(file, writeShoot(shoot));
  const checker = new Checker(shoot, questions);
  const found = checker.answers();
  const paint = paintFor(world);
  const first = measureFirst(checker, found).slice(0, 5).map(({ says, how }) => hanging('  ', `${says}: ${how}`, world.columns, '    '));
  world.out(`Written: ${file}\n${summaryLine(found, paint)}\n`);
  if (first.length > 0) world.out(`\nMeasure these first; most answers rest on them:\n${first.join('\n')}\n`);
  world.out(`\nNext: setworthy check ${file}\n`);
}

/** One question after the other, but for what options have answered and what goes without saying. */
async function asked(world: World, ask: (prompt: string) => Promise<string>, given: Typed): Promise<Record<keyof FirstAnswers, string>> {
  const typed: Partial<Record<keyof FirstAnswers, string>> = {};
  const so: Partial<Record<keyof FirstAnswers, unknown>> = {};
  for (const question of FIRST_QUESTIONS) {
    const before = so as Partial<FirstAnswers>;
    const usual = usualAnswer(question, typed);
    const choices = question.choices?.(before);
    const settled = given[question.key] ?? (choices?.length === 1 ? choices[0] : question.arises?.(before) === false ? usual : undefined);
    const answer = settled ?? (await answerTo(world, ask, question, { before, usual, choices: choices?.filter((one) => question.unfit?.(one, before) === undefined) }));
    typed[question.key] = answer;
    so[question.key] = valueOrRefuse(readAnswer(question, answer, before), `--${optionOf(question.key)}`);
  }
  return typed as Record<keyof FirstAnswers, string>;
}

interface Prompt {
  readonly before: Partial<FirstAnswers>;
  readonly usual: string;
  readonly choices: readonly string[] | undefined;
}

async function answerTo(world: World, ask: (prompt: string) => Promise<string>, question: FirstQuestion, { before, usual, choices }: Prompt): Promise<string> {
  for (;;) {
    if (choices !== undefined) world.out(`  ${choices.join('  ')}\n`);
    const typed = (await ask(`${question.asks} [${usual}] `)).trim() || usual;
    const outcome = readAnswer(question, typed, before);
    if (outcome.ok) return typed;
    world.err(`  ${outcome.faults.map(({ message, cure }) => `${message} ${cure ?? ''}`).join(' ')}\n`);
  }
}
