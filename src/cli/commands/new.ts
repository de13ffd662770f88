import { existsSync } from 'node:fs';
import { Command } from 'commander';
import { questions } from '../../check/questions/index.generated.ts';
import { Checker } from '../../check/Checker.ts';
import { measureFirst } from '../../check/measureFirst.ts';
import { nearestName } from '../../faults/nearestName.ts';
import type { Fault, Outcome } from '../../faults/Fault.ts';
import { FIRST_QUESTIONS, type FirstAnswers, type FirstQuestion } from '../../shoot/new/firstQuestions.ts';
import { newShoot } from '../../shoot/new/newShoot.ts';
import { checkShoot } from '../../shoot/read.ts';
import { writeShoot } from '../../shoot/write.ts';
import { readLength } from '../../units/length.ts';
import { summaryLine } from '../checkText.ts';
import { writeWhole } from '../files.ts';
import { paintFor } from '../paint.ts';
import { Refusal, valueOrRefuse } from '../Refusal.ts';
import type { World } from '../World.ts';
import { wrap } from '../wrap.ts';

export const summary = 'Makes a first shoot of typical parts from a few answers';

export function command(world: World): Command {
  const made = new Command('new').description(`${summary}. What is not given as an option is asked, or takes its usual value where nobody can be asked.`).argument('<file>', 'the shoot file to write: it must not exist yet');
  for (const { key, asks } of FIRST_QUESTIONS) made.option(`--${optionOf(key)} <answer>`, asks);
  made.addHelpText('after', `\nAnswers to choose from:\n${choicesText()}\n`);
  return made.action((file: string, options: Record<string, string>) => makeNew(world, file, options));
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
  if (existsSync(file)) throw new Refusal(file, [{ path: '', message: 'This file exists already; it was not touched.', cure: 'Give another name.' }]);
  const answers: Record<string, unknown> = {};
  for (const question of FIRST_QUESTIONS) answers[question.key] = await answerTo(world, question, answers, options[camel(question.key)]);
  const shoot = valueOrRefuse(checkShoot(newShoot(answers as unknown as FirstAnswers)), file);
  writeWhole(file, writeShoot(shoot));
  const checker = new Checker(shoot, questions);
  const given = checker.answers();
  const paint = paintFor(world);
  const first = measureFirst(checker, given).slice(0, 5).map(({ says, how }) => `  ${says}: ${how}`);
  world.out(`Written: ${file}\n${summaryLine(given, paint)}\n`);
  if (first.length > 0) world.out(`\nMeasure these first; most answers rest on them:\n${first.join('\n')}\n`);
  world.out(`\nNext: setworthy check ${file}\n`);
}

async function answerTo(world: World, question: FirstQuestion, soFar: Partial<FirstAnswers>, option: string | undefined): Promise<unknown> {
  const usual = question.usual(soFar);
  const choices = question.choices?.(soFar);
  if (option !== undefined || world.ask === undefined) return valueOrRefuse(understood(question, option ?? usual, choices), `--${optionOf(question.key)}`);
  if (choices?.length === 1) return choices[0];
  if (question.arises?.(soFar) === false) return valueOrRefuse(understood(question, usual, choices), `--${optionOf(question.key)}`);
  for (;;) {
    if (choices !== undefined) world.out(`  ${choices.join('  ')}\n`);
    const typed = (await world.ask(`${question.asks} [${usual}] `)).trim();
    const outcome = understood(question, typed === '' ? usual : typed, choices);
    if (outcome.ok) return outcome.value;
    world.err(`  ${outcome.faults.map(({ message, cure }) => `${message} ${cure ?? ''}`).join(' ')}\n`);
  }
}

function understood(question: FirstQuestion, text: string, choices: readonly string[] | undefined): Outcome<unknown> {
  if (question.kind === 'text') return { ok: true, value: text, warnings: [] };
  if (question.kind === 'length') return readLength(text);
  if (question.kind === 'number') {
    const value = numberIn(text, question.written);
    const whole = question.written === 'whole';
    if (Number.isFinite(value) && value > 0 && (!whole || Number.isInteger(value))) return { ok: true, value, warnings: [] };
    return refuse({ path: '', message: `"${text}" is not a ${whole ? 'whole ' : ''}number above zero.`, cure: `Usual: ${question.usual({})}.` });
  }
  if (choices?.includes(text) === true) return { ok: true, value: text, warnings: [] };
  const near = nearestName(text, choices ?? []);
  return refuse({ path: '', message: `There is no "${text}" to choose here.`, cure: near === undefined ? `Choose from: ${choices?.join(', ') ?? ''}.` : `Did you mean "${near}"?` });
}

/** As people write it: 2,39 or 2.39:1 or 16:9 for an aspect, T2.8 for a T-stop. NaN where it is no number. */
function numberIn(text: string, written: FirstQuestion['written']): number {
  const plain = text.trim().replaceAll(',', '.');
  if (written === 'T-stop') return Number(plain.replace(/^T\s*/i, '') || Number.NaN);
  const [across, down = '1', ...more] = written === 'aspect' ? plain.split(':') : [plain];
  return more.length > 0 || down.trim() === '' ? Number.NaN : Number(across) / Number(down);
}

const refuse = (fault: Fault): Outcome<never> => ({ ok: false, faults: [fault] });
