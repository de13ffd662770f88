import type { Answer, Mend, Side } from '../check/answer.ts';
import { noneDoes, shortfall } from '../check/cures.ts';
import { byQuestion, countVerdicts, sameCauses, sameFindings, waiting } from '../check/ranking.ts';
import type { Doubt } from '../check/doubt.ts';
import type { Figure } from '../shoot/ledger/figures.ts';
import { amountsInWords } from '../units/amountsInWords.ts';
import { type System, inSystem, printAmount, printNumber } from '../units/print.ts';
import type { Paint } from './paint.ts';
import { shownLength, wrap } from './wrap.ts';

export interface CheckTextOptions {
  readonly paint: Paint;
  readonly columns: number;
  readonly system: System;
  /** Every answer on its own, good ones too. */
  readonly all: boolean;
  readonly working: boolean;
  /** Why there is no answer, where there is none. */
  readonly none: string;
  /** The figures in doubt that an answer would change with, what moves it most first, for the working. */
  readonly restsOn: (answer: Answer, doubt: Doubt | undefined) => readonly Figure[];
  /** The name of the figure at a path, for people. */
  readonly nameOf: (path: string) => string;
  /** How far the answer may be out within the bounds of its figures, for the working. */
  readonly doubtOf: (answer: Answer) => Doubt | undefined;
}

/** So many subjects of one cause are listed with their numbers. */
const MOST_SUBJECTS = 5;
/** Beyond these, what a verdict rests on hardly moves it. */
const MOST_RESTS = 8;

const INDENT = ' '.repeat(10);
/** Where the question stands, behind mark, verdict, load line and use. */
const HEAD_INDENT = ' '.repeat(38);

/** Answers as text to be read at a glance: worst first, one line a question, its findings below where something is amiss. */
export function checkText(title: string, found: readonly Answer[], options: CheckTextOptions): string {
  const answers = options.system === 'metric' ? found : found.map((answer) => inWordsOf(options.system, answer));
  const groups = byQuestion(answers);
  const blocks = groups.map(({ asks, answers: group }) => {
    const worst = group[0] as Answer;
    const shown = options.all ? group : group.filter(({ verdict }) => verdict !== 'good' && verdict !== 'pending');
    return [headLine(worst, asks, group, options), ...findings(shown, options)].join('\n');
  });
  return `${[summaryOf(title, answers, options), ...blocks, waitingText(answers, options)].filter((block) => block !== '').join('\n\n')}\n`;
}

/** An answer whose sentences show their amounts in a system. */
function inWordsOf(system: System, answer: Answer): Answer {
  const said = (text: string) => amountsInWords(text, system);
  const { says, needs, has, steps, mends: cures, notes } = answer;
  const side = (one: Side | undefined) => one && { ...one, from: said(one.from) };
  const cured = cures?.map((mend) => ({ ...mend, says: said(mend.says), ...(mend.costs === undefined ? {} : { costs: said(mend.costs) }) }));
  const changed = { says: said(says), needs: side(needs), has: side(has), steps: steps?.map((step) => ({ ...step, says: said(step.says) })), mends: cured, notes: notes?.map(said) };
  return { ...answer, ...(Object.fromEntries(Object.entries(changed).filter(([, one]) => one !== undefined)) as Partial<Answer>) };
}

/** The verdicts of a check in one line, or more where it is too wide: "1 fails · 2 tight · 9 good". */
export function summaryLine(answers: readonly Answer[], paint: Paint, columns = Infinity): string {
  const counts = countVerdicts(answers);
  const words = (['fails', 'unknown', 'tight', 'good', 'pending'] as const).filter((verdict) => counts[verdict] > 0);
  const said = words.map((verdict) => `${paint.mark(verdict)} ${counts[verdict]} ${verdict}`);
  if (counts['not entered'] > 0) said.push(`${counts['not entered']} not entered yet`);
  const lines: string[] = [];
  for (const one of said) {
    const line = lines.at(-1);
    if (line === undefined || shownLength(line) + 3 + shownLength(one) > columns) lines.push(one);
    else lines[lines.length - 1] = `${line}   ${one}`;
  }
  return lines.join('\n');
}

function summaryOf(title: string, answers: readonly Answer[], { paint, none, columns }: CheckTextOptions): string {
  return `${paint.strong(title)}\n${answers.length === 0 ? wrap(none, columns) : summaryLine(answers, paint, columns)}`;
}

function headLine(worst: Answer, asks: string, group: readonly Answer[], { paint, columns }: CheckTextOptions): string {
  const use = worst.use === undefined ? '    ' : printUse(worst.use).padStart(4);
  const held = group.filter(({ verdict }) => verdict === 'good').length;
  const tally = group.length === 1 ? '' : `${held} of ${group.length} good`;
  const [first = '', ...rest] = wrap(asks, columns, HEAD_INDENT).split('\n');
  const lines = [first.trimStart(), ...rest];
  const last = lines.at(-1) ?? '';
  const fits = (lines.length === 1 ? HEAD_INDENT.length : 0) + last.length + 2 + tally.length <= columns;
  const told = tally === '' ? '' : fits ? `  ${paint.dim(tally)}` : `\n${HEAD_INDENT}${paint.dim(tally)}`;
  return `${paint.mark(worst.verdict)} ${paint.verdict(worst.verdict, worst.verdict.padEnd(8))}${paint.loadLine(worst.use, worst.verdict)} ${use}  ${lines.map(paint.strong).join('\n')}${told}`;
}

/** A use far beyond the scale needs no hundredths, and one beyond all measure is only told to be beyond it. */
const printUse = (use: number): string => (use >= 100 ? '>99' : use.toFixed(use >= 10 ? 1 : 2));

function findings(answers: readonly Answer[], options: CheckTextOptions): string[] {
  if (options.working || options.all) return sameFindings(answers).flatMap((group) => finding([group], options));
  return sameCauses(answers).flatMap((groups) => finding(groups, options));
}

/** A cause in one sentence, the numbers of each subject below it, and what mends the worst of them. */
function finding(groups: readonly (readonly Answer[])[], options: CheckTextOptions): string[] {
  const [worst] = groups[0] as readonly [Answer];
  const { paint, columns } = options;
  const line = (text: string) => wrap(text, columns, `${INDENT}  `);
  const cures = options.working ? working(worst, options) : mends(worst, options, 2);
  if (groups.length === 1) {
    const sides = sidesLine(worst, options);
    return [`${INDENT}${paint.mark(worst.verdict)} ${line(`${worst.says}${sides === '' ? '' : ` ${sides}`}`).slice(INDENT.length + 2)}`, paint.dim(line(aboutOf(groups[0] ?? []))), ...cures];
  }
  const each = groups.slice(0, MOST_SUBJECTS).map((group) => line(`${sidesLine(group[0] as Answer, options)} ${paint.dim(aboutOf(group))}`.trimStart()));
  const more = groups.length > MOST_SUBJECTS ? [line(`and ${groups.length - MOST_SUBJECTS} more with less; --all lists them`)] : [];
  return [`${INDENT}${paint.mark(worst.verdict)} ${line(worst.says).slice(INDENT.length + 2)}`, ...each, ...more, ...cures];
}

/** What a finding is about; where it is the same for several, the difference only is listed. */
function aboutOf(group: readonly Answer[]): string {
  const names = group.map(({ about }) => about.join(' · '));
  return names.length <= 3 ? names.join('; ') : `${names.slice(0, 3).join('; ')}; and ${names.length - 3} more`;
}

function sidesLine({ needs, has }: Answer, { system }: CheckTextOptions): string {
  const said = [needs && `${needs.word ?? 'needs'} ${printAmount(needs.amount, system)}`, has && `${has.word ?? 'has'} ${printAmount(has.amount, system)}`].filter((part) => part !== undefined);
  const line = said.join(', ');
  return line === '' ? '' : `${line.charAt(0).toUpperCase()}${line.slice(1)}.`;
}

function mends(answer: Answer, { paint, columns }: CheckTextOptions, most = Infinity): string[] {
  const row = (text: string, label: string) => {
    const [first = '', ...rest] = wrap(text, columns, `${INDENT}       `).split('\n');
    return [`${INDENT}  ${label} ${first.trimStart()}`, ...rest].join('\n');
  };
  const none = noneDoes(answer);
  const all = answer.mends ?? [];
  return [...all.slice(0, most).map((mend) => row(mendText(mend), paint.dim('mend'))), ...(none === undefined ? [] : [row(none, '    ')])];
}

function mendText(mend: Mend): string {
  const { says, use, costs } = mend;
  const after = use === undefined ? '' : `: use ${printUse(use)}`;
  const short = shortfall(mend);
  return `${says}${after}${short === undefined ? '' : `, ${short}`}${costs === undefined ? '' : ` (${costs})`}`;
}

function working(answer: Answer, options: CheckTextOptions): string[] {
  const { paint, columns, system } = options;
  const row = (label: string, text: string) => {
    const [first = '', ...rest] = wrap(text, columns, `${INDENT}         `).split('\n');
    return [`${INDENT}  ${paint.dim(label.padEnd(6))} ${first.trimStart()}`, ...rest].join('\n');
  };
  const side = (label: string, one: Side | undefined) => (one === undefined ? [] : [row(label, `${printAmount(one.amount, system)}   ${one.from}`)]);
  const steps = (answer.steps ?? []).map(({ says, amount }) => row('step', amount === undefined ? says : `${says}: ${printAmount(amount, system)}`));
  const missing = (answer.missing ?? []).map(({ says, measure }) => row('wants', measure === undefined ? says : `${says}. ${measure}`));
  const doubt = options.doubtOf(answer);
  const resting = options.restsOn(answer, doubt);
  const rests = [...resting.slice(0, MOST_RESTS).map((figure) => row('rests', restText(figure, options))), ...(resting.length > MOST_RESTS ? [row('rests', `and ${resting.length - MOST_RESTS} more`)] : [])];
  return [
    ...side('needs', answer.needs), ...side('has', answer.has), ...doubtRows(doubt, options).map((text) => row('doubt', text)), ...steps, ...missing, ...mends(answer, options), ...(answer.notes ?? []).map((note) => row('note', note)), ...rests,
    row('source', answer.sources.join('; ')),
  ];
}

/** How sure the use is, and which figures could turn the answer. */
function doubtRows(doubt: Doubt | undefined, { system, nameOf }: CheckTextOptions): string[] {
  if (doubt === undefined || doubt.by.length === 0) return [];
  const turning = doubt.by.filter(({ turnsAt }) => turnsAt !== undefined).slice(0, 3);
  const turns = turning.map(({ figure, turnsAt }) => `${nameOf(figure.path)} is ${printAmount({ value: turnsAt ?? figure.value, unit: figure.unit }, system)}`);
  const whatever = doubt.low > 1 ? '; fails whatever' : doubt.high <= 1 ? '; holds whatever' : '';
  return [`use ${printUse(doubt.low)} to ${printUse(doubt.high)} within the figures’ bounds${whatever}`, ...(turns.length === 0 ? [] : [`the answer changes where the ${turns.join(', or the ')}`])];
}

function restText(figure: Figure, { system, nameOf, paint }: CheckTextOptions): string {
  const bound = (value: number) => printNumber(figure.unit === 'share' ? value * 100 : inSystem({ value, unit: figure.unit }, system).value);
  const bounds = figure.low === figure.high ? '' : ` (${bound(figure.low)} to ${bound(figure.high)})`;
  return `${nameOf(figure.path)} ${printAmount({ value: figure.value, unit: figure.unit }, system)}${bounds} ${figure.basis} ${paint.dim(figure.path)}`;
}

function waitingText(answers: readonly Answer[], { paint, working: shown, columns }: CheckTextOptions): string {
  const waits = waiting(answers);
  if (waits.length === 0) return '';
  const missing = new Map(waits.flatMap(({ missing: wanted = [] }) => wanted.map((one) => [one.path, one] as const)));
  const head = `${paint.mark('unknown')} ${waits.length} ${waits.length === 1 ? 'question waits' : 'questions wait'} for ${missing.size} ${missing.size === 1 ? 'figure' : 'figures'} not entered yet`;
  if (!shown) return `${head}; --working names them.`;
  const rows = [...missing.values()].map(({ says, path, measure }) => wrap(`${says}  ${paint.dim(path)}${measure === undefined ? '' : `  ${measure}`}`, columns, INDENT));
  return [`${head}:`, ...rows].join('\n');
}
