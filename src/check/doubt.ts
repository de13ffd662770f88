import type { Figure } from '../shoot/ledger/figures.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { Again } from './Again.ts';
import type { AnyQuestion } from './question.ts';
import { restsOn } from './restsOn.ts';

/** What one figure's doubt does to an answer. */
export interface FigureDoubt {
  readonly figure: Figure;
  /** Use with the figure at its low and at its high bound; all else as it is. */
  readonly useAtLow: number;
  readonly useAtHigh: number;
  /** The figure's value at which the answer turns (use 1), where that lies within its bounds. */
  readonly turnsAt?: number;
}

/** How far an answer's use may be out. */
export interface Doubt {
  /** Use with every figure at whichever bound lowers, or raises, it most on its own: the whisker. */
  readonly low: number;
  readonly high: number;
  /** Figures that matter, the one that matters most first. */
  readonly by: readonly FigureDoubt[];
}

/** Bisections of a figure's span in search of the point where the answer turns: to a millionth of it. */
const HALVINGS = 20;

/**
 * Asks one answer's question again with each figure it rests on at its bounds. One figure at a time, then all together the worse and
 * the better way: right where the use rises or falls steadily with each figure, as in nearly every question; else an estimate. `again` is
 * kept by whoever asks this of several answers.
 */
export function doubtOf(shoot: Shoot, question: AnyQuestion, key: string, again = new Again()): Doubt | undefined {
  const use = again.first(shoot, question, key)?.use;
  if (use === undefined) return undefined;
  const useWith = (changed: Shoot): number => again.changed(changed, key)?.use ?? use;
  const by = restsOn(again.ledger, key)
    .filter(({ low, high }) => low < high)
    .map((figure) => figureDoubt(shoot, figure, useWith))
    .filter(({ useAtLow, useAtHigh }) => useAtLow !== use || useAtHigh !== use)
    .toSorted((a, b) => Math.abs(b.useAtHigh - b.useAtLow) - Math.abs(a.useAtHigh - a.useAtLow));
  const together = (better: boolean) =>
    useWith(by.reduce((changed, { figure, useAtLow, useAtHigh }) => withFigure(changed, figure.path, useAtLow < useAtHigh === better ? figure.low : figure.high), shoot));
  return { low: Math.min(use, together(true)), high: Math.max(use, together(false)), by };
}

function figureDoubt(shoot: Shoot, figure: Figure, useWith: (changed: Shoot) => number): FigureDoubt {
  const useAt = (value: number) => useWith(withFigure(shoot, figure.path, value));
  const useAtLow = useAt(figure.low);
  const useAtHigh = useAt(figure.high);
  const turns = useAtLow > 1 !== useAtHigh > 1;
  return { figure, useAtLow, useAtHigh, ...(turns ? { turnsAt: turningPoint(figure, useAtLow > 1, useAt) } : {}) };
}

function turningPoint({ low, high }: Figure, failsLow: boolean, useAt: (value: number) => number): number {
  let [from, to] = [low, high];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (from + to) / 2;
    if (useAt(middle) > 1 === failsLow) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** The shoot with a bare number at a figure's path; all it does not touch is shared. */
export function withFigure(shoot: Shoot, path: string, value: number): Shoot {
  const copyFigure = /^(kit\/copies\/[^/]+\/figures)\/(.+)$/.exec(path);
  const keys = copyFigure === null ? path.split('/') : [...(copyFigure[1] ?? '').split('/'), copyFigure[2] ?? ''];
  return replaced(shoot, keys, value) as Shoot;
}

function replaced(holder: unknown, [key, ...rest]: readonly string[], value: number): unknown {
  if (key === undefined) return value;
  if (Array.isArray(holder)) return holder.map((one, at) => (String(at) === key ? replaced(one, rest, value) : (one as unknown)));
  const map = (holder ?? {}) as Record<string, unknown>;
  return { ...map, [key]: replaced(map[key], rest, value) };
}
