import type { PullGiven } from '../../calc/focus/pull/given.ts';
import type { PullOutcome } from '../../calc/focus/pull/outcome.ts';
import type { Asking } from '../Asking.ts';
import type { ShotSubject } from '../subjects.ts';
import { outOfReach } from './focusReach.ts';
import { pullAxes } from './pullAxes.ts';
import { type PullPlan, pullGiven } from './pullGiven.ts';
import { pullHindrance } from './pullHindrance.ts';

/** A shot ready to be simulated with all that is worth trying on it, or why it cannot be. */
export type PlannedPull = { readonly plan: PullPlan; readonly given: PullGiven } | { readonly hindrance: string };

/** Takes of the shot as planned, and of each other value that is tried. */
export interface Takes {
  readonly trials: number;
  readonly whatIf: number;
  readonly seed: number;
}

/** What is simulated where nobody says otherwise: the same wherever it is asked for. */
export const USUAL_TAKES: Takes = { trials: 1000, whatIf: 200, seed: 1 };

export function plannedPull(asking: Asking, subject: ShotSubject, { trials, whatIf, seed }: Takes): PlannedPull {
  const plan = outOfReach(asking, subject) ? undefined : pullGiven(asking, subject, { seed, trials });
  if (plan === undefined) return { hindrance: pullHindrance(asking, subject) };
  return { plan, given: whatIf === 0 ? plan.given : { ...plan.given, whatIf: pullAxes(asking, subject, plan, Math.min(whatIf, trials)) } };
}

/** What came of it, less changes of a picture that who pulls does not see. */
export function toldOf({ sees }: PullPlan, outcome: PullOutcome): PullOutcome {
  return { ...outcome, changes: outcome.changes.filter(({ change }) => sees || !change.includes('picture')) };
}
