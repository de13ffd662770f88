import type { Mark, Page } from './ink/Mark.ts';
import { rectangle } from './ink/path.ts';
import { type LineRow } from './lines/lineRows.ts';
import { rowsOf } from './lineSchedule.ts';
import { type MakingOfSetup, paper } from './paper.ts';
import { pdfFile } from './printed.ts';
import { MARGIN, PAPERS, QUIET, SIZE } from './sheet/look.ts';

/** A label wraps the cable: printed twice, head to head, it reads from both sides. */
const LABEL = { widthMm: 47, heightMm: 25 } as const;
const SMALLER = 5.8;

export const labels = paper({
  id: 'labels',
  says: 'Cable labels',
  per: 'setup',
  make: (making) => {
    const rows = rowsOf(making);
    if (rows.length === 0) return [];
    return [pdfFile(making, `${making.setup}/labels.pdf`, 'Cable labels', labelPages(rows, making))];
  },
});

function labelPages(rows: readonly LineRow[], making: MakingOfSetup): Page[] {
  const size = PAPERS[making.press.paper];
  const across = Math.floor((size.widthMm - 20) / LABEL.widthMm);
  const down = Math.floor((size.heightMm - MARGIN.top - 14 - MARGIN.bottom) / LABEL.heightMm);
  // Both ends of a cable stand side by side.
  const all = rows.flatMap((row) => [{ row, end: 'from' as const }, { row, end: 'to' as const }]);
  const perPage = across * down - ((across * down) % 2);
  const left = (size.widthMm - across * LABEL.widthMm) / 2;
  return Array.from({ length: Math.ceil(all.length / perPage) }, (_, number) => ({
    ...size,
    marks: [
      ...headLine(making, left, size.widthMm),
      ...all.slice(number * perPage, (number + 1) * perPage).flatMap(({ row, end }, at) => labelMarks(making, row, end, left + (at % across) * LABEL.widthMm, MARGIN.top + 10 + Math.floor(at / across) * LABEL.heightMm)),
    ],
  }));
}

function headLine({ press, setupName, shoot, revision }: MakingOfSetup, x: number, widthMm: number): Mark[] {
  const text = `Cable labels · ${setupName} · ${shoot} · revision ${revision} · ${press.date}`;
  const how = 'Print at full size. Cut, fold on the dotted line round the cable, tape. One for each end.';
  return [
    { kind: 'text', text: press.fonts.cut('strong', SIZE.body, text, widthMm - 2 * x), x, y: MARGIN.top + 2, face: 'strong', sizePt: SIZE.body },
    { kind: 'text', text: how, x, y: MARGIN.top + 6.4, face: 'regular', sizePt: SIZE.small },
  ];
}

function labelMarks({ press: { fonts }, setupName }: MakingOfSetup, row: LineRow, end: 'from' | 'to', x: number, y: number): Mark[] {
  const half = LABEL.heightMm / 2;
  const [here, there] = end === 'from' ? [row.from, row.to] : [row.to, row.from];
  const room = LABEL.widthMm - 15;
  const one = (turned: boolean): Mark[] => {
    const place = (dx: number, dy: number) => (turned ? { x: x + LABEL.widthMm - dx, y: y + half - dy, turnDeg: 180 } : { x: x + dx, y: y + half + dy });
    const text = (words: string, dx: number, dy: number, face: 'regular' | 'strong', sizePt: number, widthMm: number, tone = 0): Mark => ({ kind: 'text', text: fonts.cut(face, sizePt, words, widthMm), ...place(dx, dy), face, sizePt, tone });
    // A long name is set smaller before any of it is cut.
    const name = (words: string, dy: number, face: 'regular' | 'strong'): Mark => text(words, 14, dy, face, fonts.widthMm(face, SIZE.small, words) <= room ? SIZE.small : SMALLER, room);
    return [
      text(row.number, 2, 7.2, 'strong', fonts.widthMm('strong', 16, row.number) <= 11 ? 16 : 12, 12),
      name(`here  ${here.piece}`, 3.6, 'strong'),
      name(here.socket, 6.4, 'regular'),
      name(`far  ${there.piece}`, 9.2, 'regular'),
      text(setupName, 2, 11.4, 'regular', 5.5, LABEL.widthMm - 4, QUIET),
    ];
  };
  return [
    { kind: 'path', d: rectangle(x, y, LABEL.widthMm, LABEL.heightMm), stroke: { widthMm: 0.15, tone: 0.4 } },
    { kind: 'path', d: `M${x} ${y + half}L${x + LABEL.widthMm} ${y + half}`, stroke: { widthMm: 0.15, tone: 0.4, dash: [0.4, 0.8] } },
    ...one(true), ...one(false),
  ];
}
