import { type LensCard, MINDED, lensCard, swapOrder } from './cards/lensCardRows.ts';
import type { Mark, Page } from './ink/Mark.ts';
import { line, rectangle } from './ink/path.ts';
import { writeCsv } from './csv.ts';
import { type MakingOfSetup, paper, textFile } from './paper.ts';
import { pdfFile } from './printed.ts';
import { HAIRLINE, LEADING, PAPERS, QUIET, RULE, SIZE } from './sheet/look.ts';
import { MM_PER_POINT } from './type/Fonts.ts';

/** A6 (ISO 216). */
const CARD = { widthMm: 105, heightMm: 148 } as const;
const INSET = 6;
const LABEL_MM = 15;

/** Cards of A6 on sheets to cut: four on A4, two on Letter. */
export const lensCards = paper({
  id: 'lens-cards',
  says: 'Lens cards',
  per: 'setup',
  make: (making) => {
    const cards = [...making.glasses.flatMap((glass) => fewestFaces(making, glass)), ...swapCard(making)];
    if (cards.length === 0) return [];
    const rows = making.glasses.map((glass) => lensCard(making, glass)).flatMap(({ name, rows: some }) => some.map(({ label, says }) => [name, label, says]));
    const swaps = swapOrder(making).map(({ glass, shots }, at) => [glass, `swap ${at + 1}`, `shots ${shots}`]);
    return [pdfFile(making, `${making.setup}/lens-cards.pdf`, 'Lens cards', sheetsOf(making, cards)), textFile(`${making.setup}/lens-cards.csv`, writeCsv(['glass', 'what', 'says'], [...rows, ...swaps]))];
  },
});

type Draw = (x: number, y: number) => Mark[];

/** Cards as many to a sheet as go on it, the sheet turned if more go on it that way. */
function sheetsOf({ press }: MakingOfSetup, cards: readonly Draw[]): Page[] {
  const size = PAPERS[press.paper];
  const [across, down] = [Math.floor(size.widthMm / CARD.widthMm), Math.floor(size.heightMm / CARD.heightMm)];
  const perSheet = Math.max(1, across * down);
  const [left, top] = [(size.widthMm - across * CARD.widthMm) / 2, (size.heightMm - down * CARD.heightMm) / 2];
  return Array.from({ length: Math.ceil(cards.length / perSheet) }, (_, sheet) => ({
    ...size,
    marks: cards.slice(sheet * perSheet, (sheet + 1) * perSheet).flatMap((draw, at) => {
      const [x, y] = [left + (at % across) * CARD.widthMm, top + Math.floor(at / across) * CARD.heightMm];
      return [{ kind: 'path' as const, d: rectangle(x, y, CARD.widthMm, CARD.heightMm), stroke: { ...HAIRLINE, tone: 0.5, dash: [1, 1] } }, ...draw(x, y)];
    }),
  }));
}

interface CardLine {
  readonly label: string;
  readonly text: string;
}

/** One finding less where that spares a card: the check tells them all. */
function fewestFaces(making: MakingOfSetup, glass: string): Draw[] {
  const tries = Array.from({ length: MINDED }, (_, at) => cardFaces(making, lensCard(making, glass, MINDED - at)));
  return tries.reduce((best, one) => (one.length < best.length ? one : best));
}

/** One card, or more where its rows do not fit one: nothing else is left out. */
function cardFaces(making: MakingOfSetup, card: LensCard): Draw[] {
  const { fonts } = making.press;
  const room = CARD.widthMm - 2 * INSET - LABEL_MM;
  const lines = card.rows.flatMap(({ label, says }): CardLine[] => fonts.lines('regular', SIZE.body, says, room).map((text, at) => ({ label: at === 0 ? label : '', text })));
  return faces(making, { title: card.name, right: [card.focal, card.squeeze].filter((word) => word !== '').join(' · '), lines });
}

function swapCard(making: MakingOfSetup): Draw[] {
  const runs = swapOrder(making);
  if (runs.length === 0) return [];
  const lines = runs.map(({ glass, shots }, at) => ({ label: `${at + 1}`, text: making.press.fonts.cut('regular', SIZE.body, `${glass}: shots ${shots}`, CARD.widthMm - 2 * INSET - LABEL_MM) }));
  return faces(making, { title: 'Swaps in the order of the shots', right: '', lines });
}

const STEP = SIZE.body * MM_PER_POINT * LEADING;
const HEAD_MM = 19;
const FOOT_MM = 8;
const ROOM_MM = CARD.heightMm - HEAD_MM - FOOT_MM;
/** Between two rows, the line between them in its middle. */
const ROW_GAP_MM = 0.7;

function faces(making: MakingOfSetup, { title, right, lines }: { title: string; right: string; lines: readonly CardLine[] }): Draw[] {
  const parts = partsOf(lines);
  return parts.map((own, at): Draw => (x, y) => face(making, { title, right, lines: own, part: parts.length === 1 ? '' : ` · card ${at + 1} of ${parts.length}` }, x, y));
}

/** The lines, as many to a card as fit it. */
function partsOf(lines: readonly CardLine[]): CardLine[][] {
  const parts: CardLine[][] = [[]];
  let leftMm = ROOM_MM;
  for (const one of lines) {
    const needsMm = STEP + (one.label === '' ? 0 : ROW_GAP_MM);
    if (needsMm > leftMm) {
      parts.push([]);
      leftMm = ROOM_MM;
    }
    parts.at(-1)?.push(one);
    leftMm -= needsMm;
  }
  return parts;
}

function face({ press: { fonts, date }, setupName, revision }: MakingOfSetup, { title, right, lines, part }: { title: string; right: string; lines: readonly CardLine[]; part: string }, x: number, y: number): Mark[] {
  const [from, to] = [x + INSET, x + CARD.widthMm - INSET];
  const rightMm = fonts.widthMm('strong', SIZE.heading, right);
  const marks: Mark[] = [
    { kind: 'text', text: fonts.cut('strong', 13, title, to - from - rightMm - 3), x: from, y: y + 10, face: 'strong', sizePt: 13 },
    { kind: 'text', text: right, x: to, y: y + 10, face: 'strong', sizePt: SIZE.heading, align: 'end' },
    { kind: 'text', text: fonts.cut('regular', SIZE.small, setupName + part, to - from), x: from, y: y + 14, face: 'regular', sizePt: SIZE.small },
    { kind: 'path', d: line(from, y + 16, to, y + 16), stroke: RULE },
    { kind: 'text', text: `revision ${revision} · ${date}`, x: from, y: y + CARD.heightMm - 4, face: 'regular', sizePt: SIZE.small, tone: QUIET },
  ];
  let place = y + HEAD_MM;
  lines.forEach(({ label, text }, at) => {
    if (label !== '') {
      if (at > 0) marks.push({ kind: 'path', d: line(from, place + ROW_GAP_MM / 2, to, place + ROW_GAP_MM / 2), stroke: { ...HAIRLINE, tone: 0.55 } });
      place += ROW_GAP_MM;
      marks.push({ kind: 'text', text: label, x: from, y: place + STEP * 0.74, face: 'regular', sizePt: SIZE.small, tone: QUIET });
    }
    marks.push({ kind: 'text', text, x: from + LABEL_MM, y: place + STEP * 0.74, face: 'regular', sizePt: SIZE.body });
    place += STEP;
  });
  return marks;
}
