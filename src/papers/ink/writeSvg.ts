import { MM_PER_POINT } from '../type/Fonts.ts';
import type { Mark, Page } from './Mark.ts';
import { coordinate } from './path.ts';

const FAMILY = "'Atkinson Hyperlegible Next','DejaVu Sans',sans-serif";
const ANCHORS = { start: 'start', middle: 'middle', end: 'end' } as const;

/** A page as an SVG document at its true size. */
export function writeSvg({ widthMm, heightMm, marks }: Page, title: string): string {
  const size = `width="${coordinate(widthMm)}mm" height="${coordinate(heightMm)}mm" viewBox="0 0 ${coordinate(widthMm)} ${coordinate(heightMm)}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img">\n<title>${escaped(title)}</title>\n${svgMarks(marks)}\n</svg>\n`;
}

/** Marks as SVG elements, for a drawing inside another page. */
export function svgMarks(marks: readonly Mark[], clips = { count: 0 }): string {
  return marks.map((mark) => element(mark, clips)).join('\n');
}

function element(mark: Mark, clips: { count: number }): string {
  if (mark.kind === 'clip') {
    clips.count += 1;
    const id = `clip-${clips.count}`;
    return `<clipPath id="${id}"><path d="${mark.d}"/></clipPath>\n<g clip-path="url(#${id})">\n${svgMarks(mark.marks, clips)}\n</g>`;
  }
  if (mark.kind === 'path') {
    const { stroke, fill } = mark;
    const line = stroke === undefined ? '' : ` stroke="${grey(stroke.tone ?? 0)}" stroke-width="${coordinate(stroke.widthMm)}" stroke-linecap="round" stroke-linejoin="round"`;
    const dash = stroke?.dash === undefined ? '' : ` stroke-dasharray="${stroke.dash.map(coordinate).join(' ')}"`;
    return `<path d="${mark.d}" fill="${fill === undefined ? 'none' : grey(fill)}" fill-rule="evenodd"${line}${dash}/>`;
  }
  const { x, y, sizePt, face, align = 'start', turnDeg = 0, tone = 0, text } = mark;
  const style = `${face === 'strong' ? ' font-weight="600"' : ''}${face === 'italic' ? ' font-style="italic"' : ''}`;
  const turn = turnDeg === 0 ? '' : ` transform="rotate(${coordinate(turnDeg)} ${coordinate(x)} ${coordinate(y)})"`;
  return `<text x="${coordinate(x)}" y="${coordinate(y)}" font-family="${FAMILY}" font-size="${coordinate(sizePt * MM_PER_POINT)}" text-anchor="${ANCHORS[align]}" fill="${grey(tone)}"${style}${turn} xml:space="preserve">${escaped(text)}</text>`;
}

function grey(tone: number): string {
  const level = Math.round(tone * 255).toString(16).padStart(2, '0');
  return `#${level}${level}${level}`;
}

/** Text inside XML; characters that XML does not know are left out. */
export const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;').replaceAll(/(?![\t\n\r])[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, '');
