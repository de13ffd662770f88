import type { PullGiven } from '../calc/focus/pull/given.ts';
import type { Curve, PullOutcome } from '../calc/focus/pull/outcome.ts';
import { type System, printAmount, printNumber } from '../units/print.ts';
import { bandPlot } from './bandPlot.ts';
import type { Paint } from './paint.ts';
import { hanging, wrap } from './wrap.ts';

/** A simulated shot, as it is told. */
export interface PulledShot {
  readonly about: readonly string[];
  readonly says: readonly string[];
  readonly given: PullGiven;
  /** The stop the shot is exposed at; what-if curves are told in it. */
  readonly tStop: number;
  readonly wished: number;
  readonly outcome: PullOutcome;
}

interface Look {
  readonly paint: Paint;
  readonly system: System;
  readonly columns: number;
  readonly unicode: boolean;
}

const PULLED: Record<PullGiven['way'], string> = {
  stops: 'pulled between two hard stops', marks: 'pulled by known marks', picture: 'pulled by the picture alone', both: 'pulled by marks and picture',
};

export function pullText(shot: PulledShot, look: Look): string {
  const { given, outcome, about, says } = shot;
  const { paint, columns } = look;
  const head = [paint.strong(about.join(' · ')), wrap([PULLED[given.way], `${given.trials} simulated takes, seed ${given.seed}`, ...says].join(' · '), columns)];
  const plot = bandPlot(outcome.bands, { circleMm: given.circleOfConfusionMm, seconds: given.seconds, columns, system: look.system, unicode: look.unicode });
  const key = look.unicode ? '● half the takes within   ░ from one in ten to nine in ten   ─ from here on it is soft' : 'o half the takes within   : from one in ten to nine in ten   - from here on it is soft';
  return `${[
    head.join('\n'),
    summary(shot, columns),
    `Blur over what counts as sharp, ${printAmount({ value: given.circleOfConfusionMm, unit: 'mm' }, look.system)} on the sensor\n${plot}\n${paint.dim(wrap(key, columns))}`,
    whatIf(shot, look),
    changes(shot, look),
    ...outcome.limits.map((limit) => paint.dim(wrap(limit, columns))),
  ]
    .filter((block) => block !== '')
    .join('\n\n')}\n`;
}

const percent = (share: number): string => `${printNumber(share * 100, 3)} %`;

function summary({ given, outcome, wished }: PulledShot, columns: number): string {
  const soft = `${printNumber(outcome.longestSoftS, 2)} s (worst tenth ${printNumber(outcome.longestSoftWorstTenthS, 2)} s)`;
  const byPicture = given.way === 'picture' || given.way === 'both';
  const rows = [
    ['sharp', `${percent(outcome.shareSharp)} of a take, ± ${printNumber(outcome.standardError * 100, 2)} from the number of takes; wished ${percent(wished)}`],
    ['', `${percent(outcome.shareSharpWorstTenth)} in the worst tenth of the takes; ${percent(outcome.takesSharpThroughout)} of the takes sharp throughout`],
    ['soft', `longest stretch of a take ${soft}`],
    ['', `largest blur of a take ${printNumber(outcome.largestBlurMm / given.circleOfConfusionMm, 2)} times what counts as sharp`],
    ...(byPicture ? [['delay', `${printNumber(outcome.wholeDelayMs)} ms round the loop: picture ${printNumber(given.pictureDelayMs)}, reaction ${printNumber(given.reactionMs)}, hand to motor ${printNumber(given.linkDelayMs)}, its lag ${printNumber(given.motorLagMs)}`]] : []),
    ...(byPicture ? [['seen', `blur from ${printNumber(given.visibleBlurMm / given.circleOfConfusionMm, 2)} times what counts as sharp on`]] : []),
    ...(outcome.wantedDegPerS > 0 && Number.isFinite(outcome.motorDegPerS) ? [['ring', `turns up to ${printNumber(outcome.wantedDegPerS)}°/s; the motor makes ${printNumber(outcome.motorDegPerS)}°/s`]] : []),
  ];
  return rows.map(([label = '', text = '']) => hanging(`${label.padEnd(6)} `, text, columns, ' '.repeat(7))).join('\n');
}

const AXES: Record<Curve['axis'], string> = {
  pictureDelayMs: 'picture delay', fNumber: 'stop', focalLengthMm: 'focal length', speed: 'speed', marksPerMove: 'marks in each move', mode: 'transmitter mode',
};

function whatIf(shot: PulledShot, look: Look): string {
  const { columns } = look;
  const { outcome } = shot;
  if (outcome.whatIf.length === 0) return '';
  const isFlat = ({ points }: Curve): boolean => points.every(({ shareSharp }) => Math.abs(shareSharp - outcome.shareSharp) < LEAST_MOVED);
  const [flat, telling] = [outcome.whatIf.filter(isFlat), outcome.whatIf.filter((curve) => !isFlat(curve))];
  const folded = flat.length === 0 ? '' : wrap(`${telling.length === 0 ? 'What if: n' : 'N'}o other ${listed(flat.map(({ axis }) => AXES[axis]))} that was tried moves the sharp share by half a point: it stays about ${percent(outcome.shareSharp)}.`, columns);
  return [telling.length === 0 ? '' : whatIfTable(telling, shot, look), folded].filter((block) => block !== '').join('\n');
}

/** Half a point: less is noise of the takes. */
const LEAST_MOVED = 0.005;
const listed = (names: readonly string[]): string => (names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1) ?? ''}`);

function whatIfTable(curves: readonly Curve[], { given, tStop }: PulledShot, look: Look): string {
  const rows = curves.flatMap(({ axis, points }) =>
    points.map((point, at) => {
      const planned = isPlanned(axis, point.at, given);
      const cells = [at === 0 ? AXES[axis] : '', valueOf(axis, point.at, given, tStop), percent(point.shareSharp), percent(point.shareSharpWorstTenth), `${printNumber(point.longestSoftS, 2)} s`, planned ? 'as planned' : ''];
      return cells;
    }),
  );
  const head = ['', '', 'sharp', 'worst tenth', 'longest soft', ''];
  return `${look.paint.strong(`What if, ${given.whatIf?.trials ?? 0} takes each`)}\n${table([head, ...rows], look)}`;
}

function isPlanned(axis: Curve['axis'], at: number | string, given: PullGiven): boolean {
  if (axis === 'mode') return given.whatIf?.modes?.find(({ name }) => name === at)?.pictureDelayMs === given.pictureDelayMs;
  const own = { pictureDelayMs: given.pictureDelayMs, fNumber: given.fNumber, focalLengthMm: given.focalLengthMm, speed: 1, marksPerMove: given.marksPerMove }[axis];
  return Math.abs(Number(at) - own) < 1e-9 * Math.max(1, own);
}

function valueOf(axis: Curve['axis'], at: number | string, given: PullGiven, tStop: number): string {
  switch (axis) {
    case 'pictureDelayMs': return `${printNumber(Number(at))} ms`;
    case 'fNumber': return `T${printNumber((Number(at) / given.fNumber) * tStop, 2)}`;
    case 'focalLengthMm': return `${printNumber(Number(at))} mm`;
    case 'speed': return `${printNumber(Number(at))}×`;
    default: return String(at);
  }
}

/** Half a tenth of a point. */
const LEAST_TOLD = 0.0005;

function changes({ outcome }: PulledShot, look: Look): string {
  if (outcome.changes.length === 0) return '';
  const telling = outcome.changes.filter(({ gain }) => Math.abs(gain) >= LEAST_TOLD);
  if (telling.length === 0) return 'No single change that was tried makes a difference.';
  if (telling.every(({ gain }) => gain < 0)) return 'No single change that was tried helps.';
  const rows = telling.map(({ change, gain, standardError, shareSharp, longestSoftS }) => [
    change, percent(shareSharp), `${gain < 0 ? '−' : '+'}${printNumber(Math.abs(gain) * 100, 2)} ± ${printNumber(standardError * 100, 2)}`, `${printNumber(longestSoftS, 2)} s`,
  ]);
  return `${look.paint.strong('What helps most, each alone, on the same takes')}\n${table([['', 'sharp', 'points', 'longest soft'], ...rows], look)}`;
}

/** Columns apart by two spaces; the first to the left, over several lines where it would be too wide, numbers to the right. */
function table(rows: readonly (readonly string[])[], { paint, columns }: Look): string {
  const widths = (rows[0] ?? []).map((_, at) => Math.max(...rows.map((row) => (row[at] ?? '').length)));
  const others = widths.slice(1).reduce((sum, width) => sum + width + 2, 0);
  const first = Math.min(widths[0] ?? 0, Math.max(16, columns - others));
  const lines = rows.flatMap(([name = '', ...cells]) => {
    const [head = '', ...rest] = hanging('', name, first + 2, '  ').split('\n');
    return [lineOf([head, ...cells]), ...rest];
  });
  return [paint.strong(lines[0] ?? ''), ...lines.slice(1)].join('\n');

  function lineOf(row: readonly string[]): string {
    return row.map((cell, at) => (at === 0 ? cell.padEnd(first) : at === row.length - 1 && cell === 'as planned' ? cell.padEnd(widths[at] ?? 0) : cell.padStart(widths[at] ?? 0))).join('  ').trimEnd();
  }
}
