import { Command, InvalidArgumentError, Option } from 'commander';
import { NoAnswer } from '../../calc/calculator.ts';
import type { PullGiven } from '../../calc/focus/pull/given.ts';
import { type PullJob, pullByAndBy, pullJob } from '../../calc/focus/pull/job.ts';
import type { PullOutcome } from '../../calc/focus/pull/outcome.ts';
import { Asking } from '../../check/Asking.ts';
import { NotEntered } from '../../check/NotEntered.ts';
import { namesOf } from '../../check/namesOf.ts';
import { shotStop } from '../../check/quantities/lightThrough.ts';
import { USUAL_TAKES, plannedPull, toldOf } from '../../check/quantities/plannedPull.ts';
import type { PullPlan } from '../../check/quantities/pullGiven.ts';
import { type ShotSubject, eachShot } from '../../check/subjects.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { focus } from '../../standards/assumptions/focus.ts';
import { chosen } from '../chosen.ts';
import { loadShoot } from '../files.ts';
import { paintFor } from '../paint.ts';
import { bandsCsv, whatIfCsv } from '../pullCsv.ts';
import { pullText } from '../pullText.ts';
import { Refusal } from '../Refusal.ts';
import { EXIT, type World } from '../World.ts';

export const summary = 'Simulates a shot pulled many times over: how much of it is sharp, and what would help';

interface Options {
  readonly shot?: string;
  readonly trials: number;
  readonly seed: number;
  readonly whatIf: number;
  readonly imperial?: boolean;
  readonly json?: boolean;
  readonly csv?: 'bands' | 'what-if' | true;
}

export function command(world: World): Command {
  return new Command('pull')
    .description(`${summary}. Bands and a ranking, never a promise about a take.`)
    .argument('<file>', 'a *.shoot.json file')
    .option('--shot <name>', 'which shot, where there are several')
    .option('--trials <count>', 'takes simulated', wholeFrom(1, 1_000_000), USUAL_TAKES.trials)
    .option('--what-if <count>', 'takes for each other value that is tried; 0: none', wholeFrom(0, 1_000_000), USUAL_TAKES.whatIf)
    .option('--seed <number>', 'start of the random numbers: the same seed gives the same takes', wholeFrom(0, 4_294_967_295), USUAL_TAKES.seed)
    .option('--imperial', 'feet and inches')
    .option('--json', 'everything as JSON: what was simulated and what came out; null: infinity')
    .addOption(new Option('--csv [table]', 'a table as CSV').choices(['bands', 'what-if']))
    .action((file: string, options: Options) => pull(world, file, options));
}

async function pull(world: World, file: string, options: Options): Promise<void> {
  const shoot = loadShoot(world, file);
  const id = chosen(shoot.shots ?? {}, options.shot, 'shot');
  const asking = new Asking(new Ledger(shoot));
  const subject = eachShot(asking.ledger).find(({ shot }) => shot === id) as ShotSubject;
  const { planned, job } = orRefuse(file, () => {
    const found = plannedPull(asking, subject, options);
    return { planned: found, job: 'hindrance' in found ? undefined : pullJob(found.given) };
  });
  if ('hindrance' in planned || job === undefined) {
    world.err(`${file}: this shot cannot be simulated. ${'hindrance' in planned ? planned.hindrance : ''}\n`);
    world.exitCode = EXIT.fails;
    return;
  }
  const outcome = await simulated(world, job);
  if (outcome === undefined) return;
  show(world, asking, subject, planned.plan, { ...options, given: job.given, outcome });
}

/** Runs the job piece by piece, so that it can be watched and stopped. `undefined`: it was stopped. */
async function simulated(world: World, job: PullJob): Promise<PullOutcome | undefined> {
  const watched = world.colour || world.ask !== undefined;
  const work = pullByAndBy(job);
  for (;;) {
    // A pressed ctrl-C is heard between two pieces.
    await new Promise((resolve) => setImmediate(resolve));
    if (world.stop.aborted) {
      world.err(`${watched ? '\n' : ''}Stopped. Nothing came of it.\n`);
      world.exitCode = EXIT.stopped;
      return undefined;
    }
    const { done, value } = work.next();
    if (done === true) {
      if (watched) world.err('\r         \r');
      return value;
    }
    if (watched) world.err(`\r${Math.floor((100 * value.done) / value.steps).toString().padStart(3)} %`);
  }
}

function show(world: World, asking: Asking, subject: ShotSubject, plan: PullPlan, done: Options & { given: PullGiven; outcome: PullOutcome }): void {
  const { given, outcome } = done;
  const told = toldOf(plan, outcome);
  const about = namesOf(asking.ledger, subject);
  if (done.json === true) return world.out(`${JSON.stringify({ about, says: plan.says, given, outcome: told }, null, 1)}\n`);
  if (done.csv !== undefined) return world.out(done.csv === 'what-if' ? whatIfCsv(told) : bandsCsv(told));
  world.out(pullText(
    { about, says: plan.says, given, tStop: shotStop(asking, subject.shot), wished: asking.assume(focus.shareSharp).value, outcome: told },
    { paint: paintFor(world), system: done.imperial === true ? 'imperial' : 'metric', columns: Math.max(60, Math.min(world.columns, 110)), unicode: world.unicode },
  ));
}

/** What is missing, or does not make a shot, is the user's to mend. */
function orRefuse<T>(file: string, work: () => T): T {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof NotEntered) throw new Refusal(file, thrown.missing.map(({ path, says, measure }) => ({ path, message: `Not entered yet: ${says}.`, ...(measure === undefined ? {} : { cure: measure }) })));
    if (thrown instanceof NoAnswer) throw new Refusal(file, [{ path: thrown.path, message: thrown.message }]);
    throw thrown;
  }
}

function wholeFrom(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!Number.isInteger(value) || value < least || value > most) throw new InvalidArgumentError(`It must be a whole number from ${least} to ${most}.`);
    return value;
  };
}
