import { controlPaths } from '../assembly/lines/controlTrace.ts';
import { lineFaults } from '../assembly/lines/lineFaults.ts';
import { type Leg, legsOf } from '../assembly/lines/picture.ts';
import { type Supply, powerTrace } from '../assembly/lines/powerTrace.ts';
import { videoTrace } from '../assembly/lines/videoTrace.ts';
import { wiring } from '../assembly/lines/wiring.ts';
import type { SetupPiece } from '../assembly/setupPieces.ts';
import { Asking } from '../check/Asking.ts';
import { NotEntered } from '../check/NotEntered.ts';
import { batteryRun } from '../check/quantities/batteryRun.ts';
import { darkSentence, faultSentence, pictureName } from '../check/quantities/lineWords.ts';
import { seenBy } from '../check/quantities/seenBy.ts';
import { flowBelow, packOn, supplyOf } from '../check/quantities/supplies.ts';
import { stageName } from '../check/quantities/videoChainDelay.ts';
import { type SetupGlass, eachViewer } from '../check/subjects.ts';
import { NoAnswer } from '../calc/calculator.ts';
import type { Ledger } from '../shoot/ledger/Ledger.ts';
import { printAmount, printNumber } from '../units/print.ts';
import type { Paint } from './paint.ts';
import { wrap } from './wrap.ts';

type Row = readonly string[];

interface Shown {
  readonly paint: Paint;
  readonly columns: number;
}

/** Every path of a setup as text: pictures from the camera to each screen, hands to motors, packs to devices. */
export function linesText(ledger: Ledger, whole: SetupGlass, shown: Shown): string {
  const name = ledger.at(`setups/${whole.setup}/name`) as string;
  const blocks = [pictures, controls, power, amiss].map((block) => block(ledger, whole, shown)).filter((block) => block !== '');
  return `${shown.paint.strong(name)}\n\n${blocks.join('\n\n')}\n`;
}

/** What is wrong with the lines as drawn. */
function amiss(ledger: Ledger, { setup, glass }: SetupGlass, shown: Shown): string {
  const wired = wiring(ledger, setup, glass);
  const found = wired.lines.flatMap((line) => (line.shared ? [] : lineFaults(wired, line).map((fault) => beside('  ', faultSentence(line, fault), shown))));
  return found.length === 0 ? '' : [shown.paint.strong('amiss'), ...new Set(found)].join('\n');
}

function pictures(ledger: Ledger, whole: SetupGlass, shown: Shown): string {
  const { into } = videoTrace(ledger, whole.setup, whole.glass);
  const screens = [...into.values()].filter(({ piece }) => piece.part.has('screen'));
  if (screens.length === 0) return '';
  return [shown.paint.strong('pictures'), ...screens.map((leg) => [beside('  ', `${leg.piece.name}${watchers(ledger, whole, leg.piece)}`, shown), ...aligned(stageRows(leg), '    ', shown)].join('\n'))].join('\n');
}

function watchers(ledger: Ledger, { setup, glass }: SetupGlass, screen: SetupPiece): string {
  const seen = eachViewer(ledger).filter((one) => one.setup === setup).flatMap(({ viewer }) => seenBy(ledger, { setup, glass, viewer }) ?? []);
  const names = seen.filter((one) => one.screen.ref === screen.ref).map(({ name, job }) => `${name} (${job})`);
  return names.length === 0 ? '' : `: ${names.join(', ')}`;
}

/** Stage, format, delay so far. */
function stageRows(last: Leg): Row[] {
  let sum = 0;
  let known = true;
  const soFar = (ms: number | undefined): string => {
    known &&= ms !== undefined;
    sum += ms ?? 0;
    return known ? printAmount({ value: sum, unit: 'ms' }) : `${printAmount({ value: sum, unit: 'ms' })} and more`;
  };
  const rows = legsOf(last).map((leg): Row => [stageWords(leg), leg.picture === undefined ? 'no picture' : formatOf(leg), soFar(leg.delay === undefined ? 0 : 'figure' in leg.delay ? leg.delay.figure.value : undefined)]);
  if (last.picture === undefined) return [...rows, [last.dark === undefined ? '' : darkSentence(last.dark), '', '']];
  const shown = soFar(last.piece.part.figure('screen/delayMs')?.value);
  const frames = known ? `, ${printNumber((sum * last.picture.frameRateHz) / 1000, 2)} frames` : '';
  return [...rows, ['on the panel', '', `${shown}${frames}`]];
}

function stageWords(leg: Leg): string {
  if (leg.kind === 'air') return `over the air: ${stageName(leg)}`;
  if (leg.kind === 'cable') return `${leg.line?.direct === true ? 'straight' : (leg.line?.cable?.name ?? 'a cable')} → ${leg.piece.name}, ${leg.port?.name ?? ''}`;
  return `${leg.piece.name}, ${leg.port?.name ?? ''}`;
}

function formatOf({ picture, desqueezedBy }: Leg): string {
  if (picture === undefined) return '';
  const mapping = picture.mapping === undefined ? '' : `, ${picture.mapping}`;
  return `${pictureName(picture)}, ${picture.sampling} ${picture.bitDepth} bit${mapping}${desqueezedBy.length > 0 ? ', de-squeezed' : ''}`;
}

function controls(ledger: Ledger, { setup, glass }: SetupGlass, shown: Shown): string {
  const paths = controlPaths(ledger, setup, glass);
  if (paths.length === 0) return '';
  const rows = paths.map(({ motor, legs, hand, broken }): Row => {
    const way = legs.map(({ kind, piece }) => (kind === 'air' ? `over the air → ${piece.name}` : piece.name)).join(' → ');
    const delayMs = [...legs.map(({ delay }) => (delay !== undefined && 'figure' in delay ? delay.figure.value : 0)), motor.part.figure('motor/delayMs')?.value ?? 0].reduce((sum, one) => sum + one, 0);
    return broken === undefined && hand !== undefined ? [way, printAmount({ value: delayMs, unit: 'ms' })] : [`${motor.name}: no hand reaches it${way === '' ? '' : ` (${way})`}`, ''];
  });
  return [shown.paint.strong('control'), ...aligned(rows, '  ', shown)].join('\n');
}

function power(ledger: Ledger, whole: SetupGlass, shown: Shown): string {
  const { supplies, unfed } = powerTrace(ledger, whole.setup, whole.glass);
  const used = supplies.filter(({ nodes }) => nodes.length > 0);
  if (used.length === 0 && unfed.length === 0) return '';
  const asking = new Asking(ledger);
  const trees = used.map((supply) => supplyText(asking, whole, supply, shown));
  const dark = unfed.length === 0 ? [] : [beside('  ', `without power: ${unfed.map(({ name }) => name).join(', ')}`, shown)];
  return [shown.paint.strong('power'), ...trees, ...dark].join('\n');
}

/** A pack or supply with its tree: outlet, cable, device, volts, amps, watts. */
function supplyText(asking: Asking, whole: SetupGlass, traced: Supply, shown: Shown): string {
  const packs = traced.packs.map(({ name }) => name).filter((name) => name !== traced.piece.name);
  const title = `${traced.piece.name}${packs.length === 0 ? '' : `: ${counted(packs)}`}${traced.hotSwap ? ', hot swap' : ''}`;
  try {
    const supply = supplyOf(asking, whole, traced.piece.ref) ?? traced;
    if (supply.kind === 'mains') return [beside('  ', title, shown), ...aligned(nodeRows(supply, traced, undefined), '    ', shown)].join('\n');
    const pack = packOn(asking, whole.setup, supply);
    const { hours, loadW, endedBy } = batteryRun(asking, whole, supply);
    const flow = flowBelow(supply, pack.nominalV, 'typicalW');
    const lasts = hours === Infinity ? '' : `, ${printAmount({ value: hours, unit: 'h' })} a pack at ${printAmount({ value: pack.temperatureC, unit: '°C' })}${endedBy === undefined ? '' : `, until ${endedBy.name} drops out`}`;
    const head = `${title}   ${printAmount({ value: pack.nominalV, unit: 'V' })}, ${printAmount({ value: flow.sourceA, unit: 'A' })}, ${printAmount({ value: loadW, unit: 'W' })}${lasts}`;
    return [beside('  ', head, shown), ...aligned(nodeRows(supply, traced, flow.collapses ? undefined : flow), '    ', shown)].join('\n');
  } catch (thrown) {
    return [beside('  ', title, shown), ...aligned(nodeRows(traced, traced, undefined), '    ', shown), beside('    ', reason(thrown), shown)].join('\n');
  }
}

function reason(thrown: unknown): string {
  if (thrown instanceof NotEntered) return `not entered: ${thrown.missing.map(({ says }) => says).join('; ')}`;
  if (thrown instanceof NoAnswer) return thrown.message;
  throw thrown;
}

/** `traced` is the supply as drawn: what is in it and not in the other is left unplugged. */
function nodeRows({ nodes, piece: source }: Supply, traced: Supply, flow: { volts: Float64Array; amps: Float64Array } | undefined): Row[] {
  return inTreeOrder(nodes).map(({ at, depth }): Row => {
    const { line, piece, regulated, draw } = nodes[at] as Supply['nodes'][number];
    const outlet = `${'  '.repeat(Math.min(depth, 20))}${line === undefined ? `${source.name} itself` : `${line.from.name} → ${piece.name}`}`;
    const cable = line === undefined ? '' : line.direct === true ? 'straight in' : (line.cable?.name ?? 'no cable chosen');
    if (draw === undefined && traced.nodes[at]?.draw !== undefined) return [outlet, cable, 'not to be plugged in: wrong voltage', '', ''];
    const made = regulated === undefined ? '' : `, made ${printAmount({ value: regulated.volts, unit: 'V' })}`;
    const amounts = flow === undefined ? ['', ''] : [printAmount({ value: flow.volts[at] as number, unit: 'V' }), printAmount({ value: flow.amps[at] as number, unit: 'A' })];
    const watts = draw === undefined ? '' : draw.missing === undefined ? printAmount({ value: draw.typicalW, unit: 'W' }) : 'watts not entered';
    return [outlet, `${cable}${made}`, ...amounts, watts];
  });
}

/** Each node with what hangs on it right below. */
function inTreeOrder(nodes: Supply['nodes']): { at: number; depth: number }[] {
  const children = new Map<number, number[]>();
  nodes.forEach(({ parent }, at) => children.set(parent, [...(children.get(parent) ?? []), at]));
  const order: { at: number; depth: number }[] = [];
  const waiting = (children.get(-1) ?? []).toReversed().map((at) => ({ at, depth: 0 }));
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    order.push(next);
    const { at, depth } = next;
    waiting.push(...(children.get(at) ?? []).toReversed().map((child) => ({ at: child, depth: depth + 1 })));
  }
  return order;
}

function counted(names: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].map(([name, count]) => (count === 1 ? name : `${count} × ${name}`)).join(', ');
}

/** A line behind an indent; what does not fit goes on below it, further in. */
const beside = (indent: string, text: string, { columns }: Shown): string => wrap(text, columns - 2, indent).replaceAll('\n', '\n  ');

/** Rows in columns: the first is what it is, the rest is dimmed. Where they do not fit beside each other, the rest of each stands below its first. */
function aligned(rows: readonly Row[], indent: string, shown: Shown): string[] {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => (row.length > 1 && row.slice(1).every((cell) => cell === '') ? 0 : (row[column] ?? '').length))));
  const fits = indent.length + widths.reduce((sum, width) => sum + width + 2, -2) <= shown.columns;
  return rows.map((row) => {
    const [first = '', ...rest] = row;
    const said = rest.filter((cell) => cell !== '');
    const isWide = said.length === 0 && indent.length + first.length > shown.columns;
    if (fits && !isWide) return `${indent}${first.padEnd(widths[0] ?? 0)}  ${shown.paint.dim(rest.map((cell, at) => cell.padEnd(widths[at + 1] ?? 0)).join('  '))}`.trimEnd();
    const depth = ' '.repeat(first.length - first.trimStart().length);
    const below = said.length === 0 ? [] : [shown.paint.dim(wrap(said.join(' · '), shown.columns, `${indent}${depth}    `))];
    return [beside(`${indent}${depth}`, first.trimStart(), shown), ...below].join('\n');
  });
}
