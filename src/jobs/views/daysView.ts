import type { Answer } from '../../check/answer.ts';
import { Asking } from '../../check/Asking.ts';
import { nameAt } from '../../check/nameAt.ts';
import { dayOrder } from '../../check/quantities/dayOrder.ts';
import { shotsOfDay } from '../../check/quantities/dayPlan.ts';
import { lensChange } from '../../check/quantities/lensChange.ts';
import type { Edit } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type View, viewOf } from './View.ts';

/** A shot in its day's order, with the work on the camera before it. */
export interface DayShot {
  readonly shot: string;
  readonly name: string;
  readonly setupName: string;
  readonly glassName: string;
  /** Nothing before the first shot of a day. */
  readonly change: View<number> | undefined;
}

export interface DayView {
  readonly day: string;
  readonly name: string;
  readonly shots: readonly DayShot[];
  readonly order: View<LeastWork> | undefined;
}

/** The order of a day's shots with the least work on the camera. */
export interface LeastWork {
  /** Shots that stay together, by name. */
  readonly blocks: readonly (readonly string[])[];
  readonly leastMin: number;
  readonly plannedMin: number;
  readonly method: 'exact' | 'heuristic';
  readonly atLeastMin: number;
  /** Takes the shots in that order; nothing where it is not worth it. */
  readonly edit: Edit | undefined;
}

/** The shots of every day with what changes between them; and of each day the order with least work, as `swap.order` answers it. */
export function daysView(ledger: Ledger, answers: readonly Answer[]): DayView[] {
  const asking = new Asking(ledger);
  const days = ledger.keys('days').map((day): DayView => ({ day, name: nameAt(ledger, 'days', day), shots: shotsIn(asking, shotsOfDay(ledger, day)), order: orderOf(asking, day, answers) }));
  const without = ledger.keys('shots').filter((shot) => !days.some(({ shots }) => shots.some((one) => one.shot === shot)));
  return [...days.filter(({ shots }) => shots.length > 0), ...(without.length === 0 ? [] : [{ day: '', name: 'no day', shots: shotsIn(asking, without), order: undefined }])];
}

function shotsIn(asking: Asking, shots: readonly string[]): DayShot[] {
  const { ledger } = asking;
  const glassOf = (shot: string) => ({ setup: ledger.at(`shots/${shot}/setup`) as string, glass: ledger.at(`shots/${shot}/glass`) as string });
  return shots.map((shot, at) => {
    const [before, own] = [shots[at - 1], glassOf(shot)];
    const change = before === undefined ? undefined : viewOf(() => lensChange(asking, glassOf(before), own).minutes);
    return { shot, name: nameAt(ledger, 'shots', shot), setupName: nameAt(ledger, 'setups', own.setup), glassName: nameAt(ledger, 'glasses', own.glass), change };
  });
}

function orderOf(asking: Asking, day: string, answers: readonly Answer[]): View<LeastWork> | undefined {
  const view = viewOf(() => dayOrder(asking, day));
  if (!view.ok || view.value === undefined) return view.ok ? undefined : view;
  if (typeof view.value === 'string') return { ok: false, says: view.value };
  const { best, bestMin, plannedMin, method, atLeastMin } = view.value;
  const answer = answers.find(({ question, subject }) => question === 'swap.order' && subject['day'] === day);
  const edit = answer?.mends?.find((mend) => mend.edit !== undefined)?.edit;
  return { ok: true, value: { blocks: best.map(({ shots }) => shots.map((shot) => nameAt(asking.ledger, 'shots', shot))), leastMin: bestMin, plannedMin, method, atLeastMin, edit } };
}
