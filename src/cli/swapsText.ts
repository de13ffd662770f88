import { placeSetup } from '../assembly/placing/placeSetup.ts';
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
import { hanging, wrap } from './wrap.ts';

interface Shown {
  readonly paint: Paint;
  readonly columns: number;
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

/** Minutes from each glass to each. Where names and numbers do not fit beside each other the names come first; many glasses make several tables. */
function minutesTable(asking: Asking, setup: string, glasses: readonly string[], { paint, columns }: Shown): string {
  if (glasses.length < 2) return 'One glass only: nothing is changed.';
  const names = glasses.map((glass) => nameAt(asking.ledger, 'glasses', glass));
  const changes = glasses.map((from) => glasses.map((to) => (from === to ? undefined : lensChange(asking, { setup, glass: from }, { setup, glass: to }))));
  const hasUnfinished = changes.flat().some((one) => one?.finishes === false);
  const cells = changes.map((all) => all.map((one) => `${one === undefined ? '·' : minutesOf(one.minutes)}${one?.finishes === false ? UNFINISHED : hasUnfinished ? ' ' : ''}`));
  const cellWidth = Math.max(...cells.flat().map(({ length }) => length)) + 2;
  const widest = Math.max(HEAD.length, ...names.map((name) => name.length + 4));
  const isNarrow = widest + cellWidth * Math.min(glasses.length, LEAST_CELLS) > columns;
  const rowWidth = isNarrow ? HEAD.length : widest;
  const numbered = names.map((name, at) => hanging(`${`${at + 1}`.padStart(2)}  `, name, columns, '    '));
  const heads = names.map((name, at) => (isNarrow ? `${`${at + 1}`.padStart(2)}` : `${`${at + 1}`.padStart(2)}  ${name}`).padEnd(rowWidth));
  const perTable = Math.max(1, Math.floor((columns - rowWidth) / cellWidth));
  const row = (head: string, of: readonly string[]) => `${head}${of.map((cell) => cell.padStart(cellWidth)).join('')}`.trimEnd();
  const tables = Array.from({ length: Math.ceil(glasses.length / perTable) }, (_, table) => {
    const [from, to] = [table * perTable, (table + 1) * perTable];
    return [paint.dim(row(HEAD.padEnd(rowWidth), glasses.map((_glass, at) => `${at + 1}${hasUnfinished ? ' ' : ''}`).slice(from, to))), ...heads.map((head, at) => row(head, (cells[at] ?? []).slice(from, to)))].join('\n');
  });
  const marked = hasUnfinished ? [wrap(`${UNFINISHED} cannot be finished as built: a gear stays out of reach`, columns)] : [];
  return [...(isNarrow ? [numbered.join('\n')] : []), ...tables, ...marked].join('\n\n');
}

/** Behind the minutes of a change that cannot be finished. */
const UNFINISHED = '*';

const HEAD = 'minutes from, to';
/** Fewer columns of numbers beside the names make too many tables. */
const LEAST_CELLS = 6;

/** From each glass to the next one of the set, step by step. */
function inRow(asking: Asking, setup: string, glasses: readonly string[], shown: Shown): string[] {
  return glasses.slice(1).map((to, at) => {
    const from = glasses[at] ?? '';
    const { steps, minutes, finishes } = lensChange(asking, { setup, glass: from }, { setup, glass: to });
    const title = shown.paint.strong(wrap(`${nameAt(asking.ledger, 'glasses', from)} → ${nameAt(asking.ledger, 'glasses', to)}   about ${minutesOf(minutes)}${finishes ? '' : ', cannot be finished as built'}`, shown.columns));
    return [title, ...steps.map((step, index) => stepLine(step, index, shown))].join('\n');
  });
}

function stepLine(step: ChangeStep, index: number, { paint, columns, system }: Shown): string {
  const { tool, minutes } = step;
  const how = [tool === undefined ? '' : tool === 'hand' ? 'by hand' : tool, minutes === 0 ? '' : minutesOf(minutes)].filter((one) => one !== '').join(', ');
  return hanging(`${`${index + 1}`.padStart(4)}. `, `${doneWords(step, system)}${how === '' ? '' : paint.dim(`   ${how}`)}`, columns, STEP_INDENT);
}

const STEP_INDENT = ' '.repeat(6);

function places(asking: Asking, setup: string, { system, columns }: Shown): string[] {
  const found = motorPlaces(asking, setup);
  if (found === undefined) return [];
  const served = found.best.serves.map((glass) => nameAt(asking.ledger, 'glasses', glass)).join(', ');
  const says = `One place of the motor, ${printAmount({ value: Math.round(found.best.atMm), unit: 'mm' }, system)} ${found.from}, serves ${found.best.serves.length} of ${found.all.length + found.nowhere.length}: ${served}.`;
  return [wrap([says, ...missed(asking, setup, found.nowhere)].join(' '), columns)];
}

/** Glasses whose ring the motor does not reach, and those of which nothing says where it would. */
function missed({ ledger }: Asking, setup: string, nowhere: readonly string[]): string[] {
  const [placed, unplaced] = [true, false].map((one) => nowhere.filter((glass) => placeSetup(ledger, setup, glass).meshes.length > 0 === one).map((glass) => nameAt(ledger, 'glasses', glass)).join(', '));
  return [...(placed === '' ? [] : [`It meets ${placed} nowhere as built.`]), ...(unplaced === '' ? [] : [`Where it meets ${unplaced} is not entered.`])];
}

/** Days that use the setup. */
function days(asking: Asking, setup: string, shown: Shown): string[] {
  const { ledger } = asking;
  return ledger.keys('days').filter((day) => ledger.keys('shots').some((shot) => ledger.at(`shots/${shot}/day`) === day && ledger.at(`shots/${shot}/setup`) === setup)).flatMap((day) => {
    const found = dayOrder(asking, day);
    if (found === undefined) return [];
    const title = shown.paint.strong(wrap(`${nameAt(ledger, 'days', day)}: order of the shots with least work`, shown.columns));
    return [typeof found === 'string' ? `${title}\n${wrap(found, shown.columns, '    ')}` : [title, ...orderLines(asking, found, shown)].join('\n')];
  });
}

function orderLines({ ledger }: Asking, { best, bestMin, plannedMin, method, atLeastMin }: DayOrder, { columns }: Shown): string[] {
  const how = method === 'exact' ? 'exact: no order allowed takes less' : `a good order, perhaps not the best; none takes less than ${minutesOf(atLeastMin)}`;
  return [...best.map(({ shots }, at) => hanging(`${`${at + 1}`.padStart(4)}. `, shots.map((shot) => shotName(ledger, shot)).join(', '), columns, STEP_INDENT)), wrap(`changes ${minutesOf(bestMin)} (${how}); as planned ${minutesOf(plannedMin)}`, columns, '    ')];
}
