import type { Verdict } from '../../check/answer.ts';
import { line } from '../ink/path.ts';
import { type Face, MM_PER_POINT } from '../type/Fonts.ts';
import { LEADING, QUIET, RULE, SIZE } from './look.ts';
import type { Sheet } from './Sheet.ts';
import { tickBox, verdictMark } from './verdictMarks.ts';

export interface Column {
  readonly says: string;
  /** Shares of the width; a fixed width where `mm` is given. */
  readonly share?: number;
  readonly mm?: number;
  readonly align?: 'start' | 'end';
}

/** A cell: words; a mark before them; a box to tick; `face` for what leads. */
export type Cell = string | { readonly text: string; readonly face?: Face; readonly verdict?: Verdict; readonly box?: boolean; readonly quiet?: boolean };

export interface Row {
  readonly cells: readonly Cell[];
  /** Room for a hand. */
  readonly leastMm?: number;
  /** A heading across the table. */
  readonly group?: string;
}

const PAD = 1.2;
const GAP = 2.4;

/** A table with a head on every page and hairlines between rows; a row stays in one piece unless it is taller than a page. */
export function table(sheet: Sheet, columns: readonly Column[], rows: readonly Row[], sizePt: number = SIZE.body): void {
  const places = placesOf(sheet, columns);
  const step = sizePt * MM_PER_POINT * LEADING;
  const head = () => drawHead(sheet, columns, places);
  head();
  for (const row of rows) {
    if (row.group !== undefined) {
      if (sheet.leftMm < step * 4) {
        sheet.turn();
        head();
      }
      sheet.space(1.4);
      sheet.text(row.group, { face: 'strong', sizePt, afterMm: 0.4 });
      sheet.block(0.2, (y) => sheet.rule(y));
      continue;
    }
    const cells = row.cells.map((cell, at) => linesOf(sheet, cell, places[at]?.widthMm ?? 20, sizePt));
    let from = 0;
    const total = Math.max(1, ...cells.map(({ lines }) => lines.length));
    const heightOf = (count: number) => Math.max(count * step + PAD * 2, row.leastMm ?? 0);
    while (from < total) {
      if (heightOf(total - from) > sheet.leftMm && (from === 0 || sheet.leftMm < step * 3)) {
        sheet.turn();
        head();
      }
      const fits = Math.max(1, Math.min(total - from, Math.floor((sheet.leftMm - PAD * 2) / step)));
      const [first, count] = [from, fits];
      sheet.block(heightOf(count), (y) => {
        cells.forEach((cell, at) => drawCell(sheet, cell, { ...(places[at] as Place), y, first, count, step, sizePt, heightMm: heightOf(count), align: columns[at]?.align ?? 'start' }));
        sheet.rule(y + heightOf(count));
      });
      from += fits;
    }
  }
  sheet.space(2);
}

interface Place {
  readonly x: number;
  readonly widthMm: number;
}

function placesOf(sheet: Sheet, columns: readonly Column[]): Place[] {
  const fixed = columns.reduce((sum, { mm = 0 }) => sum + mm, 0) + GAP * (columns.length - 1);
  const shares = columns.reduce((sum, { share = 0 }) => sum + share, 0);
  let x = sheet.left;
  return columns.map(({ mm, share = 0 }) => {
    const widthMm = mm ?? ((sheet.widthMm - fixed) * share) / Math.max(shares, 1e-9);
    const place = { x, widthMm };
    x += widthMm + GAP;
    return place;
  });
}

function drawHead(sheet: Sheet, columns: readonly Column[], places: readonly Place[]): void {
  const lines = columns.map(({ says }, at) => sheet.fonts.lines('regular', SIZE.small, says, places[at]?.widthMm ?? 20));
  const tall = Math.max(...lines.map(({ length }) => length));
  const step = SIZE.small * MM_PER_POINT * 1.2;
  sheet.keep(tall * step + 12);
  sheet.block(tall * step + 1.6, (y) => {
    lines.forEach((words, at) => {
      const { x, widthMm } = places[at] as Place;
      const end = columns[at]?.align === 'end';
      words.forEach((word, row) => sheet.put({ kind: 'text', text: word, x: end ? x + widthMm : x, y: y + (tall - words.length + row + 0.8) * step, face: 'regular', sizePt: SIZE.small, tone: QUIET, align: end ? 'end' : 'start' }));
    });
    sheet.put({ kind: 'path', d: line(sheet.left, y + tall * step + 1.4, sheet.left + sheet.widthMm, y + tall * step + 1.4), stroke: RULE });
  });
}

interface Lines {
  readonly lines: readonly string[];
  readonly face: Face;
  readonly verdict: Verdict | undefined;
  readonly box: boolean;
  readonly tone: number;
}

function linesOf(sheet: Sheet, cell: Cell, widthMm: number, sizePt: number): Lines {
  const { text, face = 'regular', verdict, box = false, quiet = false } = typeof cell === 'string' ? { text: cell } : cell;
  const room = widthMm - (verdict === undefined ? 0 : 4) - (box ? 4.6 : 0);
  return { lines: text === '' ? [] : sheet.fonts.lines(face, sizePt, text, room), face, verdict, box, tone: quiet ? QUIET : 0 };
}

interface Drawn extends Place {
  readonly y: number;
  readonly first: number;
  readonly count: number;
  readonly step: number;
  readonly sizePt: number;
  readonly heightMm: number;
  readonly align: 'start' | 'end';
}

function drawCell(sheet: Sheet, { lines, face, verdict, box, tone }: Lines, { x, widthMm, y, first, count, step, sizePt, align }: Drawn): void {
  const middle = y + PAD + step * 0.5;
  let indent = 0;
  if (box) {
    if (first === 0) sheet.put(tickBox(x, middle));
    indent += 4.6;
  }
  if (verdict !== undefined) {
    if (first === 0) sheet.put(...verdictMark(verdict, x + indent + 1.5, middle));
    indent += 4;
  }
  lines.slice(first, first + count).forEach((text, at) => {
    sheet.put({ kind: 'text', text, x: align === 'end' ? x + widthMm : x + indent, y: y + PAD + step * (at + 0.76), face, sizePt, tone, align });
  });
}
