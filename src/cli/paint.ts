import type { Verdict } from '../check/answer.ts';
import type { World } from './World.ts';

/** The look of the terminal: marks, the load line, and colour where somebody sees it. Shape before colour, always with the word. */
export interface Paint {
  readonly mark: (verdict: Verdict) => string;
  readonly verdict: (verdict: Verdict, text: string) => string;
  readonly dim: (text: string) => string;
  readonly strong: (text: string) => string;
  readonly loadLine: (use: number | undefined, verdict: Verdict) => string;
}

const MARKS: Readonly<Record<Verdict, readonly [unicode: string, ascii: string]>> = {
  good: ['○', 'o'], tight: ['◐', '('], fails: ['◆', '#'], unknown: ['◌', '?'], pending: ['–', '-'],
};
/** Burnt orange, straw yellow, muted blue-green: apart also for the common colour-vision deficiencies. */
const COLOURS: Readonly<Record<Verdict, number>> = { fails: 166, tight: 179, good: 73, unknown: 246, pending: 246 };
const CELLS = 20;

export function paintFor({ colour, unicode }: Pick<World, 'colour' | 'unicode'>): Paint {
  const escape = (code: string, text: string) => (colour ? `\u001B[${code}m${text}\u001B[0m` : text);
  const verdict = (of: Verdict, text: string) => escape(`38;5;${COLOURS[of]}`, text);
  const [fill, rest, line, over] = unicode ? ['━', '·', '┃', '▸'] : ['=', '.', '|', '>'];
  const loadLine = (use: number | undefined, of: Verdict): string => {
    if (use === undefined) return ' '.repeat(CELLS + 1);
    const filled = Math.round((Math.min(Math.max(use, 0), 2) / 2) * CELLS);
    const cell = (at: number) => (at < filled ? fill : rest);
    const left = Array.from({ length: CELLS / 2 }, (_, at) => cell(at)).join('');
    const right = Array.from({ length: CELLS / 2 }, (_, at) => (at === CELLS / 2 - 1 && use > 2 ? over : cell(at + CELLS / 2))).join('');
    return `${verdict(of, left)}${line}${verdict(of, right)}`;
  };
  return {
    mark: (of) => verdict(of, MARKS[of][unicode ? 0 : 1]),
    verdict,
    dim: (text) => escape('2', text),
    strong: (text) => escape('1', text),
    loadLine,
  };
}
