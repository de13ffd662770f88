import { Command } from 'commander';
import { Again } from '../../check/Again.ts';
import { type Answer, DISCIPLINES } from '../../check/answer.ts';
import { bearingOn } from '../../check/bearing.ts';
import { Checker } from '../../check/Checker.ts';
import { figureName } from '../../check/describeFigure.ts';
import { type Doubt, doubtOf } from '../../check/doubt.ts';
import { questions } from '../../check/questions/index.generated.ts';
import type { AnyQuestion } from '../../check/question.ts';
import { worstFirst } from '../../check/ranking.ts';
import { restsOn } from '../../check/restsOn.ts';
import { answersAbout, type Narrowing, whyNone } from '../answersAbout.ts';
import { checkText } from '../checkText.ts';
import { loadShoot } from '../files.ts';
import { paintFor } from '../paint.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { EXIT, type World } from '../World.ts';

export const summary = 'Checks a shoot and says what fails, worst first';

interface Options extends Narrowing {
  readonly json?: boolean;
  readonly all?: boolean;
  readonly working?: boolean;
  readonly imperial?: boolean;
  readonly studied?: boolean;
}

export function command(world: World): Command {
  return new Command('check')
    .description(`${summary}. Exit code: 0 all good or tight, 1 something fails or is unknown, 2 bad input.`)
    .argument('<file>', 'a *.shoot.json file')
    .option('--build <name>', 'only what concerns this build')
    .option('--setup <name>', 'only this setup, with its builds and the days it is shot on')
    .option('--glass <name>', 'only this glass')
    .option('--lens <name>', 'only glasses with this lens')
    .option('--shot <name>', 'only this shot')
    .option('--question <id>', `only this question or discipline (${DISCIPLINES.join(', ')})`)
    .option('--all', 'every answer on its own line, good ones too')
    .option('--working', 'numbers, steps, figures and sources of each finding')
    .option('--studied', 'run the studied questions too: simulations take seconds')
    .option('--imperial', 'inches, feet and pounds')
    .option('--json', 'all answers as JSON')
    .action((file: string, options: Options) => check(world, file, options));
}

function check(world: World, file: string, options: Options): void {
  const shoot = loadShoot(world, file);
  const checker = new Checker(shoot, questions);
  const again = new Again();
  const all = checker.answers();
  const narrowed = answersAbout(shoot, all, options);
  const answers = options.studied === true ? narrowed.flatMap((one) => (one.verdict === 'pending' ? (checker.study(one.key) ?? []) : one)) : narrowed;
  if (options.json === true) {
    const full = answers.toSorted(worstFirst).map((answer) => Object.assign({}, answer, { rests: restsOn(checker.ledger, answer.key) }));
    world.out(`${JSON.stringify({ title: shoot.title, answers: full }, written, 1)}\n`);
  } else {
    world.out(
      checkText(shoot.title, answers, {
        paint: paintFor(world), columns: Math.max(60, Math.min(world.columns, 120)), system: options.imperial === true ? 'imperial' : 'metric',
        all: options.all ?? false, none: narrowed.length > 0 ? '' : whyNone(shoot, all, options), working: options.working ?? false, restsOn: (answer, doubt) => restingOn(shoot, checker, answer, doubt, again), doubtOf: (answer) => doubtIn(shoot, answer, again), nameOf: (path) => figureName(checker.ledger, path),
      }),
    );
  }
  if (answers.some(({ verdict }) => verdict === 'fails' || verdict === 'unknown')) world.exitCode = EXIT.fails;
}

/** JSON has no number for it; files have the word. */
const written = (_: string, value: unknown): unknown => (value === Infinity ? 'infinity' : value);

/** Studied answers take too long to ask dozens of times over. */
const quickly = (answer: Answer): AnyQuestion | undefined => questions.find(({ id, kind }) => id === answer.question && kind === 'immediate');

function doubtIn(shoot: Shoot, answer: Answer, again: Again): Doubt | undefined {
  const question = quickly(answer);
  return question === undefined ? undefined : doubtOf(shoot, question, answer.key, again);
}

/** What bears on an answer; of a studied one, and of one that is not known, all that was read. */
function restingOn(shoot: Shoot, { ledger }: Checker, answer: Answer, doubt: Doubt | undefined, again: Again): readonly Figure[] {
  const question = answer.verdict === 'unknown' ? undefined : quickly(answer);
  return question === undefined ? restsOn(ledger, answer.key) : bearingOn(shoot, question, answer.key, doubt, again);
}
