import { Asking } from '../check/Asking.ts';
import { nameAt, shotName } from '../check/nameAt.ts';
import { type DayOrder, dayOrder } from '../check/quantities/dayOrder.ts';
import { doneWords } from '../check/quantities/changeWords.ts';
import type { ChangeStep } from '../check/quantities/changeStep.ts';
import { lensChange } from '../check/quantities/lensChange.ts';
import { motorPlaces } from '../check/quantities/motorPlaces.ts';
import { glassesOf } from '../check/subjects.ts';
import type { Ledger } from '../shoot/ledger/Ledger.ts';
import { type System, printAmount } from '../units/print.ts';
import type { Paint } from './paint.ts';

interface Shown {
  readonly paint: Paint;
  readonly system: System;
}

/** Every lens change of a setup, minutes from each glass to each, and the days' shots in the order with least work. */
export function swapsText(ledger: Ledger, setup: string, shown: Shown): string {
  const asking = new Asking(ledger);
  const glasses = glassesOf(ledger, setup);
  const blocks = [shown.paint.strong(nameAt(ledger, 'setups', setup)), minutesTable(asking, setup, glasses, shown), ...inRow(asking, setup, glasses, shown), ...places(asking, setup, shown), ...days(asking, setup, shown)];
  return `${blocks.filter((one) => one !== '').join('\n\n')}\n`;
}

const minutesOf = (minutes: number): string => printAmount({ value: Math.round(minutes * 10) / 10, unit: 'min' });

function minutesTable(asking: Asking, setup: string, glasses: readonly string[], { paint }: Shown): string {
  if (glasses.length < 2) return 'One glass only: nothing is changed.';
  const names = glasses.map((glass) => nameAt(asking.ledger, 'glasses', glass));
  const widest = Math.max(...names.map((name) => name.length)) + 2;
  const cells = (row: readonly string[]) => row.map((cell) => cell.padStart(9)).join('');
  const head = paint.dim(`${'minutes from, to'.padEnd(widest + 4)}${cells(glasses.map((_, at) => `${at + 1}`))}`);
  const rows = glasses.map((from, at) => `${`${at + 1}`.padStart(2)}  ${(names[at] ?? '').padEnd(widest)}${cells(glasses.map((to) => (from === to ? '·' : minutesOf(lensChange(asking, { setup, glass: from }, { setup, glass: to }).minutes))))}`);
  return [head, ...rows].join('\n');
}

/** From each glass to the next one of the set, step by step. */
function inRow(asking: Asking, setup: string, glasses: readonly string[], shown: Shown): string[] {
  return glasses.slice(1).map((to, at) => {
    const from = glasses[at] ?? '';
    const { steps, minutes } = lensChange(asking, { setup, glass: from }, { setup, glass: to });
    const title = shown.paint.strong(`${nameAt(asking.ledger, 'glasses', from)} → ${nameAt(asking.ledger, 'glasses', to)}   about ${minutesOf(minutes)}`);
    return [title, ...steps.map((step, index) => stepLine(step, index, shown))].join('\n');
  });
}

function stepLine(step: ChangeStep, index: number, { paint, system }: Shown): string {
  const { tool, minutes } = step;
  const how = [tool === undefined ? '' : tool === 'hand' ? 'by hand' : tool, minutes === 0 ? '' : minutesOf(minutes)].filter((one) => one !== '').join(', ');
  return `${`${index + 1}`.padStart(4)}. ${doneWords(step, system)}${how === '' ? '' : paint.dim(`   ${how}`)}`;
}

function places(asking: Asking, setup: string, { system }: Shown): string[] {
  const found = motorPlaces(asking, setup);
  if (found === undefined) return [];
  const served = found.best.serves.map((glass) => nameAt(asking.ledger, 'glasses', glass)).join(', ');
  return [`One place of the motor, ${printAmount({ value: Math.round(found.best.atMm), unit: 'mm' }, system)} along its rod, serves ${found.best.serves.length} of ${found.all.length + found.nowhere.length}: ${served}.${found.nowhere.length === 0 ? '' : ` It meets ${found.nowhere.map((glass) => nameAt(asking.ledger, 'glasses', glass)).join(', ')} nowhere.`}`];
}

/** Days that use the setup. */
function days(asking: Asking, setup: string, shown: Shown): string[] {
  const { ledger } = asking;
  return ledger.keys('days').filter((day) => ledger.keys('shots').some((shot) => ledger.at(`shots/${shot}/day`) === day && ledger.at(`shots/${shot}/setup`) === setup)).flatMap((day) => {
    const found = dayOrder(asking, day);
    if (found === undefined) return [];
    const title = shown.paint.strong(`${nameAt(ledger, 'days', day)}: order of the shots with least work`);
    return [typeof found === 'string' ? `${title}\n    ${found}` : [title, ...orderLines(asking, found)].join('\n')];
  });
}

function orderLines({ ledger }: Asking, { best, bestMin, plannedMin, method, atLeastMin }: DayOrder): string[] {
  const how = method === 'exact' ? 'exact: no order allowed takes less' : `a good order, perhaps not the best; none takes less than ${minutesOf(atLeastMin)}`;
  return [...best.map(({ shots }, at) => `${`${at + 1}`.padStart(4)}. ${shots.map((shot) => shotName(ledger, shot)).join(', ')}`), `    changes ${minutesOf(bestMin)} (${how}); as planned ${minutesOf(plannedMin)}`];
}
