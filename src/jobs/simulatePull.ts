import type { PullOutcome } from '../calc/focus/pull/outcome.ts';
import { pullByAndBy, pullJob } from '../calc/focus/pull/job.ts';
import { Asking } from '../check/Asking.ts';
import { USUAL_TAKES, plannedPull, toldOf } from '../check/quantities/plannedPull.ts';
import { Ledger } from '../shoot/ledger/Ledger.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { type View, viewOf } from './views/View.ts';

/** What came of the takes, and how the simulation understood the shot. */
export interface Simulated extends PullOutcome {
  readonly says: readonly string[];
  readonly takes: number;
}

/** Pulls a shot many times over. `report` hears what share is done. */
export function simulatePull(shoot: Shoot, shot: string, report: (share: number) => void): View<Simulated> {
  const found = viewOf((): Simulated | string => {
    const asking = new Asking(new Ledger(shoot));
    const subject = { shot, setup: asking.entered<string>(`shots/${shot}/setup`, 'the setup of the shot'), glass: asking.entered<string>(`shots/${shot}/glass`, 'the lens of the shot') };
    const planned = plannedPull(asking, subject, USUAL_TAKES);
    if ('hindrance' in planned) return planned.hindrance;
    const work = pullByAndBy(pullJob(planned.given));
    for (;;) {
      const { done, value } = work.next();
      if (done === true) return { ...toldOf(planned.plan, value), says: planned.plan.says, takes: USUAL_TAKES.trials };
      report(value.done / value.steps);
    }
  });
  return !found.ok ? found : typeof found.value === 'string' ? { ok: false, says: found.value } : { ok: true, value: found.value };
}
