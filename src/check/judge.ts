/** The documented mappings from what was found to `use` and verdict. Each question ends in one of them. */
import type { Judgement, Side, Step, Verdict } from './answer.ts';

/** Zero capacity, or more demand than can be told apart on the scale, gives this. */
export const LARGEST_USE = 1e6;

/** Up to 0.9 there is room; up to 1 it just goes. */
export function verdictOf(use: number, goodUpTo = 0.9): Exclude<Verdict, 'pending' | 'unknown'> {
  if (use <= goodUpTo) return 'good';
  return use <= 1 ? 'tight' : 'fails';
}

type Extra = Pick<Judgement, 'steps' | 'mends' | 'notes' | 'curve'>;
/** What to say for each verdict; `tight` falls back on `holds`. */
export interface Sayings {
  readonly holds: string;
  readonly fails: string;
  readonly tight?: string;
}

function judged(use: number, says: Sayings, extra: Extra & { needs?: Side; has?: Side }, goodUpTo?: number): Judgement {
  const bounded = Math.min(use, LARGEST_USE);
  const verdict = verdictOf(bounded, goodUpTo);
  const sentence = verdict === 'fails' ? says.fails : verdict === 'tight' ? (says.tight ?? says.holds) : says.holds;
  return { says: sentence, verdict, use: bounded, ...extra };
}

/** Positive demand against positive capacity: use = demand / capacity. */
export function judgeRatio({ needs, has, says, goodUpTo, ...extra }: Extra & { needs: Side; has: Side; says: Sayings; goodUpTo?: number }): Judgement {
  const demand = needs.amount.value;
  const capacity = has.amount.value;
  const use = demand <= 0 ? 0 : capacity <= 0 ? LARGEST_USE : demand / capacity;
  return judged(use, says, { needs, has, ...extra }, goodUpTo);
}

/** A reach that must come down to what is asked, such as the closest focus: use = reached / asked. */
export function judgeReach({ needs, has, says, use, ...extra }: Extra & { needs: Side; has: Side; says: Sayings; use: number }): Judgement {
  return judged(use, says, { needs, has, ...extra });
}

/** A value that must stay in a window: use = distance from its middle over half its width; 1 at either edge. */
export function judgeWindow({ value, low, high, says, needs, has, ...extra }: Extra & { value: number; low: number; high: number; says: Sayings; needs: Side; has: Side }): Judgement {
  const half = (high - low) / 2;
  const use = half <= 0 ? (value === low ? 1 : LARGEST_USE) : Math.abs(value - (low + high) / 2) / half;
  return judged(use, says, { needs, has, ...extra });
}

/** A margin in decibels: 1 when nothing is left, 0 when `spanDb` or more is. use = 1 − margin / span, not below 0. */
export function judgeMargin({ marginDb, spanDb, says, needs, has, ...extra }: Extra & { marginDb: number; spanDb: number; says: Sayings; needs: Side; has: Side }): Judgement {
  return judged(Math.max(0, 1 - marginDb / spanDb), says, { needs, has, ...extra });
}

/** A share wished for: use = (1 − got) / (1 − wished). */
export function judgeShare({ got, wished, says, needs, has, ...extra }: Extra & { got: number; wished: number; says: Sayings; needs: Side; has: Side }): Judgement {
  const use = wished >= 1 ? (got >= 1 ? 0 : LARGEST_USE) : (1 - got) / (1 - wished);
  return judged(use, says, { needs, has, ...extra });
}

/** Yes or no: no scale, only the mark and the word. `caution` makes a yes tight: it goes, with something to mind. */
export function judgeYes({ yes, caution = false, says, ...extra }: Extra & { yes: boolean; caution?: boolean; says: Sayings; needs?: Side; has?: Side }): Judgement {
  const verdict = !yes ? 'fails' : caution ? 'tight' : 'good';
  return { says: !yes ? says.fails : caution ? (says.tight ?? says.holds) : says.holds, verdict, ...extra };
}

/** Could not be judged, for a reason that no figure would mend. */
export function cannotJudge(says: string, steps: readonly Step[] = [], notes: readonly string[] = []): Judgement {
  return { says, verdict: 'unknown', steps, notes };
}
