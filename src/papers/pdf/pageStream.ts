import { coordinate } from '../ink/path.ts';
import type { Mark } from '../ink/Mark.ts';
import { MM_PER_POINT, type Run } from '../type/Fonts.ts';
import type { PdfFonts } from './PdfFonts.ts';

type Text = Mark & { kind: 'text' };

/** Marks as PDF operators. The page is turned to millimetres with y downwards once; letters are turned back upright. */
export function pageStream(marks: readonly Mark[], heightMm: number, runsOf: (mark: Text) => readonly Run[], fonts: PdfFonts): string {
  const scale = 72 / 25.4;
  const lines = [`${scale.toFixed(9)} 0 0 ${(-scale).toFixed(9)} 0 ${(heightMm * scale).toFixed(6)} cm`, '1 J 1 j'];
  const draw = (mark: Mark): void => {
    if (mark.kind === 'clip') {
      lines.push('q', operators(mark.d), 'W n');
      mark.marks.forEach(draw);
      lines.push('Q');
    } else if (mark.kind === 'text') lines.push(...textOperators(mark, runsOf(mark), fonts));
    else lines.push(...pathOperators(mark));
  };
  marks.forEach(draw);
  return lines.join('\n');
}

function pathOperators({ d, stroke, fill }: Mark & { kind: 'path' }): string[] {
  const set: string[] = [];
  if (fill !== undefined) set.push(`${coordinate(fill)} g`);
  if (stroke !== undefined) set.push(`${coordinate(stroke.tone ?? 0)} G ${coordinate(stroke.widthMm)} w [${(stroke.dash ?? []).map(coordinate).join(' ')}] 0 d`);
  const paint = fill === undefined ? 'S' : stroke === undefined ? 'f*' : 'B*';
  return fill === undefined && stroke === undefined ? [] : [...set, operators(d), paint];
}

const OPERATORS: Readonly<Record<string, string>> = { M: 'm', L: 'l', C: 'c', Z: 'h' };

function operators(d: string): string {
  return [...d.matchAll(/([MLCZ])([^MLCZ]*)/g)].map(([, command = '', numbers = '']) => `${numbers.trim()} ${OPERATORS[command] ?? ''}`.trim()).join('\n');
}

function textOperators(mark: Text, runs: readonly Run[], fonts: PdfFonts): string[] {
  const size = mark.sizePt * MM_PER_POINT;
  const width = runs.reduce((sum, { widthEm }) => sum + widthEm, 0) * size;
  const back = mark.align === 'end' ? width : mark.align === 'middle' ? width / 2 : 0;
  const turn = ((mark.turnDeg ?? 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [x, y] = [mark.x - back * cos, mark.y - back * sin];
  const shown = runs.map((run) => {
    const { key, hex } = fonts.use(run);
    return `/${key} ${coordinate(size)} Tf <${hex}> Tj`;
  });
  return [`BT ${coordinate(mark.tone ?? 0)} g ${coordinate(cos)} ${coordinate(sin)} ${coordinate(sin)} ${coordinate(-cos)} ${coordinate(x)} ${coordinate(y)} Tm`, ...shown, 'ET'];
}
