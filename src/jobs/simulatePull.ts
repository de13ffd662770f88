import type { PullOutcome } from '../calc/focus/pull/outcome.ts';
import { pullByAndBy, pullJob } from '../calc/focus/pull/job.ts';
import { Asking } from '../check/Asking.ts';
import { pullGiven } from '../check/quantities/pullGiven.ts';
import { Ledger } from '../shoot/ledger/Ledger.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { type View, viewOf } from './views/View.ts';

const SEED = 1;

/** What came of the takes, and how the simulation understood the shot. */
export interface Simulated extends PullOutcome {
  readonly says: readonly string[];
  readonly takes: number;
}

/** Pulls a shot many times over. `report` hears what share is done. */
export function simulatePull(shoot: Shoot, shot: string, takes: number, report: (share: number) => void): View<Simulated> {
  return viewOf(() => {
    const asking = new Asking(new Ledger(shoot));
    const subject = { shot, setup: asking.entered<string>(`shots/${shot}/setup`, 'the setup of the shot'), glass: asking.entered<string>(`shots/${shot}/glass`, 'the lens of the shot') };
    const plan = pullGiven(asking, subject, { seed: SEED, trials: takes });
    if (plan === undefined) throw new Error('no picture reaches who pulls, or no hand reaches the ring; the lines say which.');
    const given = { ...plan.given, whatIf: { trials: Math.min(takes, 100) } };
    const work = pullByAndBy(pullJob(given));
    for (;;) {
      const { done, value } = work.next();
      if (done === true) return { ...value, says: plan.says, takes };
      report(value.done / value.steps);
    }
  });
}
