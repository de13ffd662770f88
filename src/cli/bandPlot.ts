import type { Band } from '../calc/focus/pull/outcome.ts';
import { printDistance } from '../units/length.ts';
import type { System } from '../units/print.ts';

export interface BandPlotOptions {
  readonly circleMm: number;
  readonly seconds: number;
  readonly columns: number;
  readonly system: System;
  readonly unicode: boolean;
}

/** Rows to an octave of blur. */
const ROWS_PER_OCTAVE = 2;
const LEAST_OCTAVE = -2;
const MOST_OCTAVE = 6;
const LABEL = 6;

/**
 * Blur over time as characters: a row for each half octave of blur over what counts as sharp. Filled from one take in ten to nine in
 * ten, with the middle take marked; the line is where soft begins. Times that are not judged, racks, stay empty.
 */
export function bandPlot(bands: readonly Band[], { circleMm, seconds, columns, system, unicode }: BandPlotOptions): string {
  const width = columns - LABEL - 2;
  const cells = columnsOf(bands, seconds, width, circleMm);
  const top = Math.min(MOST_OCTAVE, Math.max(1, Math.ceil(Math.log2(Math.max(...cells.map((cell) => cell?.nineTenths ?? 0), 1e-9)))));
  const marks = unicode ? { band: '░', middle: '●', soft: '─', axis: '│', corner: '└', base: '─', times: '×' } : { band: ':', middle: 'o', soft: '-', axis: '|', corner: '+', base: '-', times: 'x' };
  const rows = Array.from({ length: (top - LEAST_OCTAVE) * ROWS_PER_OCTAVE + 1 }, (_, at) => top - at / ROWS_PER_OCTAVE);
  const lines = rows.map((octave) => {
    const row = rowOf(octave);
    const empty = octave === 0 ? marks.soft : ' ';
    const text = cells.map((cell) => (cell === undefined ? ' ' : characterAt(cell, row, marks, empty))).join('');
    return `${labelOf(octave, marks.times).padStart(LABEL)} ${marks.axis}${text}`.trimEnd();
  });
  return [...lines, `${' '.repeat(LABEL + 1)}${marks.corner}${marks.base.repeat(width)}`, ...axes(bands, seconds, width, system)].join('\n');
}

function characterAt({ tenth, median, nineTenths }: Cell, row: number, marks: { readonly band: string; readonly middle: string }, empty: string): string {
  if (row === rowOf(log2(median))) return marks.middle;
  return row >= rowOf(log2(tenth)) && row <= rowOf(log2(nineTenths)) ? marks.band : empty;
}

const rowOf = (octave: number): number => Math.round(Math.max(octave, LEAST_OCTAVE) * ROWS_PER_OCTAVE);
const log2 = (value: number): number => (value > 0 ? Math.log2(value) : LEAST_OCTAVE);
const labelOf = (octave: number, times: string): string => (octave % 1 !== 0 ? '' : octave >= 0 ? `${2 ** octave}${times}` : `1/${2 ** -octave}${times}`);

interface Cell {
  readonly tenth: number;
  readonly median: number;
  readonly nineTenths: number;
}

/** The worst of the bands that fall into each character column, over what counts as sharp. */
function columnsOf(bands: readonly Band[], seconds: number, width: number, circleMm: number): (Cell | undefined)[] {
  const step = seconds / width;
  return Array.from({ length: width }, (_, at) => {
    const inside = bands.filter(({ atS }) => atS >= at * step && atS < (at + 1) * step);
    const nearest = inside.length > 0 ? inside : bands.filter(({ atS }) => Math.abs(atS - (at + 0.5) * step) < seconds / bands.length);
    const worst = nearest.toSorted((a, b) => b.nineTenthsMm - a.nineTenthsMm)[0];
    return worst === undefined ? undefined : { tenth: worst.tenthMm / circleMm, median: worst.medianMm / circleMm, nineTenths: worst.nineTenthsMm / circleMm };
  });
}

const TICK = 12;

/** Time, and where the subject is then, under the plot. */
function axes(bands: readonly Band[], seconds: number, width: number, system: System): string[] {
  const ticks = Array.from({ length: Math.floor(width / TICK) + 1 }, (_, at) => at * TICK).filter((column) => column <= width - 4);
  const time = ticks.map((column) => ({ column, text: `${((seconds * column) / width).toFixed(1)} s` }));
  const place = ticks.flatMap((column) => {
    const atS = (seconds * column) / width;
    const band = bands.toSorted((a, b) => Math.abs(a.atS - atS) - Math.abs(b.atS - atS))[0];
    return band === undefined ? [] : [{ column, text: printDistance(band.distanceMm, system) }];
  });
  return [time, place].map((labels) => ' '.repeat(LABEL + 1) + labels.reduce((line, { column, text }) => `${line.padEnd(column + 1)}${text}`, ''));
}
