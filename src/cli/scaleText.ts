import type { HandWheel } from '../check/quantities/handWheel.ts';
import type { RingScale } from '../check/quantities/focusScaleOf.ts';
import type { ScaleMark } from '../check/quantities/scaleMarks.ts';
import { printDistance } from '../units/length.ts';
import { type System, printNumber } from '../units/print.ts';
import type { Paint } from './paint.ts';
import { wrap } from './wrap.ts';

/** The scale of one ring, and the wheels that turn it. */
export interface ScaleTable {
  readonly name: string;
  readonly scale: RingScale;
  /** Names of the glasses it focuses. */
  readonly glasses: readonly string[];
  readonly wheels: readonly HandWheel[];
  readonly marks: readonly ScaleMark[];
}

interface Look {
  readonly paint: Paint;
  readonly system: System;
  readonly columns: number;
  /** Distances asked for that no scale reaches. */
  readonly outside: readonly number[];
}

export function scaleText(tables: readonly ScaleTable[], look: Look): string {
  const unreached = look.outside.map((mm) => `${printDistance(mm, look.system)} lies outside the scale.`);
  return `${[...tables.map((table) => tableText(table, look)), ...unreached].join('\n\n')}\n`;
}

function tableText(table: ScaleTable, look: Look): string {
  const { name, scale, glasses, wheels, marks } = table;
  const { paint, system, columns } = look;
  const head = [
    paint.strong(name),
    `made of ${scale.says}: ${printDistance(scale.farMm, system)} to ${printDistance(scale.nearMm, system)} in ${printNumber(scale.throwDeg)}°; distances from the sensor plane`,
    ...(glasses.length === 0 ? ['it focuses no glass of the shoot as it is'] : [`focuses ${glasses.join(', ')}`]),
    ...wheels.map(wheelSays),
    ...(scale.from === 'ends' ? ['An estimate: good to plan with, not to pull by. Tape five marks round the ring and read their angles.'] : []),
  ];
  const rows = [['distance', 'ring', ...wheels.map(({ piece }) => piece.name), ''], ...marks.map((mark) => cells(mark, wheels, system))];
  const widths = (rows[0] ?? []).map((_, at) => Math.max(...rows.map((row) => (row[at] ?? '').length)));
  const lines = rows.map((row) => `  ${row.map((cell, at) => (at === row.length - 1 ? cell : cell.padStart(widths[at] ?? 0))).join('  ')}`.trimEnd());
  return [...head.map((line) => wrap(line, columns)), '', paint.dim(lines[0] ?? ''), ...lines.slice(1)].join('\n');
}

function wheelSays({ piece, mapped, turn, ringDegPerDeg }: HandWheel): string {
  return mapped
    ? `${piece.name}: its ${printNumber(turn.value)}° are mapped over the whole throw, 0° at the far end`
    : `${piece.name}: geared, a degree of it turns the ring by ${printNumber(ringDegPerDeg)}°; counted from the far end, wherever it is engaged`;
}

function cells({ distanceMm, ringDeg, fromFarDeg, taped }: ScaleMark, wheels: readonly HandWheel[], system: System): string[] {
  return [printDistance(distanceMm, system), degrees(ringDeg), ...wheels.map(({ ringDegPerDeg }) => degrees(fromFarDeg / ringDegPerDeg)), taped ? 'taped' : ''];
}

const degrees = (value: number): string => `${value.toFixed(1).replace('-', '−')}°`;

export function scaleJson(tables: readonly ScaleTable[]): string {
  const plain = tables.map(({ name, scale, glasses, wheels, marks }) => ({
    name, madeOf: scale.from, throwDeg: scale.throwDeg, glasses, wheels: wheels.map(({ piece, mapped, turn, ringDegPerDeg }) => ({ name: piece.name, mapped, turnDeg: turn.value, ringDegPerDeg })),
    marks: marks.map(({ distanceMm, ringDeg, fromFarDeg, taped }) => ({ distanceMm: stated(distanceMm), ringDeg, wheelDeg: wheels.map(({ ringDegPerDeg }) => fromFarDeg / ringDegPerDeg), taped })),
  }));
  return `${JSON.stringify({ scales: plain }, null, 1)}\n`;
}

export function scaleCsv(tables: readonly ScaleTable[]): string {
  const rows = tables.flatMap(({ name, wheels, marks }) =>
    marks.flatMap(({ distanceMm, ringDeg, fromFarDeg, taped }) => {
      const row = [name, stated(distanceMm), ringDeg.toFixed(3)];
      const turned = wheels.length === 0 ? [['', '']] : wheels.map(({ piece, ringDegPerDeg }) => [piece.name, (fromFarDeg / ringDegPerDeg).toFixed(3)]);
      return turned.map((wheel) => [...row, ...wheel, taped ? 'taped' : ''].map(quoted).join(','));
    }),
  );
  return `${['ring,distanceMm,ringDeg,wheel,wheelDeg,taped', ...rows].join('\n')}\n`;
}

const stated = (mm: number): number | string => (mm === Infinity ? 'infinity' : Number(mm.toFixed(1)));
const quoted = (value: string | number): string => (/[",\n]/.test(String(value)) ? `"${String(value).replaceAll('"', '""')}"` : String(value));
