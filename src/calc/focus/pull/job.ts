import { checkShot } from './checkShot.ts';
import type { PullGiven } from './given.ts';
import { type PullOutcome, outcomeOf } from './outcome.ts';
import { type Shot, framesOf, judgedFramesOf, prepareShot, stepsPerFrameOf } from './shot.ts';
import { runTakes } from './takes.ts';
import { type Tally, ledgerTally, mergeTally } from './tally.ts';
import { type Variant, variantsOf } from './variants.ts';

/**
 * The whole work as tasks that any worker can run in any order: each makes the same job of the same inputs, runs the tasks it
 * is handed and returns their tallies, which a ledger merges. Tallies are counts: the order they come in changes nothing.
 */
export interface PullJob {
  readonly given: PullGiven;
  readonly variants: readonly Variant[];
  readonly tasks: readonly PullTask[];
  /** Time steps in all, for progress. */
  readonly steps: number;
}

export interface PullTask {
  /** Which of `variants`; −1: the shot as planned. */
  readonly variant: number;
  /** Trials [from, to). */
  readonly from: number;
  readonly to: number;
  readonly steps: number;
}

/** Steps in a task: some tens of milliseconds, the delay until a stop is heard. */
const STEPS_PER_TASK = 2_000_000;

/** Lays out the work, or throws `NoAnswer`. */
export function pullJob(given: PullGiven): PullJob {
  checkShot(given);
  const variants = variantsOf(given);
  const tasks = [given, ...variants.map((variant) => variant.given)].flatMap((one, i) =>
    tasksFor(one, i - 1, i === 0 ? given.trials : given.whatIf!.trials),
  );
  return { given, variants, tasks, steps: tasks.reduce((sum, task) => sum + task.steps, 0) };
}

function tasksFor(given: PullGiven, variant: number, trials: number): PullTask[] {
  const stepsPerTake = framesOf(given) * stepsPerFrameOf(given);
  const takes = Math.max(1, Math.floor(STEPS_PER_TASK / stepsPerTake));
  return Array.from({ length: Math.ceil(trials / takes) }, (_, i) => {
    const [from, to] = [i * takes, Math.min(trials, (i + 1) * takes)];
    return { variant, from, to, steps: (to - from) * stepsPerTake };
  });
}

/** Runs tasks of a job; keeps the shot it ran last, since tasks of one shot follow each other. */
export function pullRunner(job: PullJob): (task: PullTask) => Tally {
  let ready: { variant: number; shot: Shot } | undefined;
  return ({ variant, from, to }) => {
    if (ready?.variant !== variant) ready = { variant, shot: prepareShot(givenOf(job, variant)) };
    return runTakes(ready.shot, from, to, variant === -1);
  };
}

/** Takes in the tallies of a job, in any order, and makes its outcome of them when all are in. */
export interface PullLedger {
  readonly enter: (task: PullTask, tally: Tally) => void;
  readonly outcome: () => PullOutcome;
}

export function pullLedger(job: PullJob): PullLedger {
  const shots = [job.given, ...job.variants.map((variant) => variant.given)];
  const tallies = shots.map((given, i) => ledgerTally(i === 0 ? given.trials : job.given.whatIf!.trials, framesOf(given), i === 0));
  return {
    enter: (task, tally) => mergeTally(tallies[task.variant + 1]!, tally),
    outcome: () => {
      const counted = job.variants.map(({ given }, i) => ({ shot: { given, judgedFrames: judgedFramesOf(given) }, tally: tallies[i + 1]! }));
      return outcomeOf(prepareShot(job.given), tallies[0]!, job.variants, counted);
    },
  };
}

/** Runs a job piece by piece: yields after each task how much is done, so that the caller can show it, pause, or stop by not going on. */
export function* pullByAndBy(job: PullJob): Generator<{ done: number; steps: number }, PullOutcome> {
  const run = pullRunner(job);
  const ledger = pullLedger(job);
  let done = 0;
  for (const task of job.tasks) {
    ledger.enter(task, run(task));
    done += task.steps;
    yield { done, steps: job.steps };
  }
  return ledger.outcome();
}

const givenOf = (job: PullJob, variant: number): PullGiven => (variant === -1 ? job.given : job.variants[variant]!.given);
