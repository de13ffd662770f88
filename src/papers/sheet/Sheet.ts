import type { Mark, Page } from '../ink/Mark.ts';
import { line } from '../ink/path.ts';
import { type Face, type Fonts, MM_PER_POINT } from '../type/Fonts.ts';
import { ALARM, BOLD_RULE, HAIRLINE, LEADING, MARGIN, PAPERS, QUIET, type PaperSize, RULE, SIZE } from './look.ts';
import { verdictMark } from './verdictMarks.ts';
import type { Verdict } from '../../check/answer.ts';

/** What stands on every page of a paper. */
export interface Heading {
  /** The kind of paper: "Line schedule". */
  readonly title: string;
  /** What it is of: the setup, the kit. */
  readonly of: string;
  /** Shoot, revision, date: printed on each page. */
  readonly shoot: string;
  readonly revision: string;
  readonly date: string;
}

export interface TextStyle {
  readonly face?: Face;
  readonly sizePt?: number;
  readonly tone?: number;
  readonly indentMm?: number;
  /** Space below. */
  readonly afterMm?: number;
}

/** Pages filled from the top down. A block that does not fit goes to the next page. */
export class Sheet {
  readonly fonts: Fonts;
  readonly left = MARGIN.left;
  readonly widthMm: number;
  readonly #heading: Heading;
  readonly #size: { readonly widthMm: number; readonly heightMm: number };
  readonly #pages: Mark[][] = [];
  #y = 0;
  /** Where the last line right across was drawn on this page. */
  #ruledAt = -Infinity;

  constructor(fonts: Fonts, paper: PaperSize, heading: Heading, turned = false) {
    this.fonts = fonts;
    this.#heading = heading;
    const { widthMm, heightMm } = PAPERS[paper];
    this.#size = turned ? { widthMm: heightMm, heightMm: widthMm } : { widthMm, heightMm };
    this.widthMm = this.#size.widthMm - MARGIN.left - MARGIN.right;
    this.#begin();
  }

  /** Where the next block starts. */
  get y(): number {
    return this.#y;
  }

  get leftMm(): number {
    return this.#bottom - this.#y;
  }

  get #bottom(): number {
    return this.#size.heightMm - MARGIN.bottom;
  }

  /** Goes to a new page unless so much is left on this one. */
  keep(heightMm: number): void {
    if (this.#y + heightMm > this.#bottom && !this.#isFresh) this.turn();
  }

  /** Goes to a new page. */
  turn(): void {
    this.#pages.push([]);
    this.#y = MARGIN.top;
    this.#ruledAt = -Infinity;
    const { title, of } = this.#heading;
    this.put({ kind: 'text', text: this.fonts.cut('regular', SIZE.small, `${title} · ${of} · continued`, this.widthMm), x: this.left, y: this.#y + 2, face: 'regular', sizePt: SIZE.small, tone: QUIET });
    this.#y += 6;
  }

  get #isFresh(): boolean {
    return this.#pages.length > 1 && this.#y <= MARGIN.top + 6;
  }

  put(...marks: Mark[]): void {
    this.#pages.at(-1)?.push(...marks);
  }

  space(mm: number): void {
    this.#y = Math.min(this.#y + mm, this.#bottom);
  }

  heading(text: string): void {
    this.keep(18);
    // The last line of a table, or the edge of what is said loudest, is line enough.
    const isRuled = this.#y - this.#ruledAt <= 4;
    this.#y += isRuled ? 3 : 5;
    if (!isRuled) this.rule(this.#y - 2.2);
    this.text(text, { face: 'strong', sizePt: SIZE.heading, afterMm: 1.6 });
  }

  text(text: string, { face = 'regular', sizePt = SIZE.body, tone = 0, indentMm = 0, afterMm = 0.8 }: TextStyle = {}): void {
    const step = sizePt * MM_PER_POINT * LEADING;
    for (const one of this.fonts.lines(face, sizePt, text, this.widthMm - indentMm)) {
      this.keep(step);
      this.put({ kind: 'text', text: one, x: this.left + indentMm, y: this.#y + step * 0.76, face, sizePt, tone });
      this.#y += step;
    }
    this.#y += afterMm;
  }

  /** What nobody may overlook, in large letters between bold rules. */
  alarm(verdict: Verdict, words: string, details: string): void {
    const large = this.fonts.lines('strong', ALARM, words, this.widthMm - 2);
    this.keep(large.length * 12 + 20);
    const edge = () => this.put({ kind: 'path', d: line(this.left, this.#y, this.left + this.widthMm, this.#y), stroke: BOLD_RULE });
    this.#y += 1;
    edge();
    this.#y += 1;
    for (const one of large) {
      this.put({ kind: 'text', text: one, x: this.left, y: this.#y + 9.4, face: 'strong', sizePt: ALARM });
      this.#y += 12;
    }
    this.put(...verdictMark(verdict, this.left + 1.5, this.#y + 2));
    this.#paragraph(details, 5);
    this.#y += 1;
    edge();
    this.#ruledAt = this.#y;
    this.#y += 3;
  }

  #paragraph(text: string, indentMm: number): void {
    this.text(text, { indentMm });
  }

  /** A hairline right across. */
  rule(y: number): void {
    this.put({ kind: 'path', d: line(this.left, y, this.left + this.widthMm, y), stroke: HAIRLINE });
    this.#ruledAt = y;
  }

  /** A drawing of a given height across the page. */
  drawing(heightMm: number, draw: (x: number, y: number, widthMm: number) => readonly Mark[]): void {
    this.keep(heightMm);
    this.put(...draw(this.left, this.#y, this.widthMm));
    this.#y += heightMm;
  }

  /** A block of a height that the caller has measured: draws at the place it is given. */
  block(heightMm: number, draw: (y: number) => void): void {
    this.keep(heightMm);
    draw(this.#y);
    this.#y += heightMm;
  }

  pages(): Page[] {
    const { shoot, revision, date, title, of } = this.#heading;
    const y = this.#size.heightMm - 8;
    return this.#pages.map((marks, at) => {
      const number = `page ${at + 1} of ${this.#pages.length}`;
      const room = this.widthMm - this.fonts.widthMm('regular', SIZE.small, number) - 6;
      const foot = this.fonts.cut('regular', SIZE.small, `${date} · revision ${revision} · ${of} · ${title} · ${shoot}`, room);
      return {
        ...this.#size,
        marks: [
          ...marks,
          { kind: 'path', d: line(this.left, y - 3.6, this.left + this.widthMm, y - 3.6), stroke: HAIRLINE },
          { kind: 'text', text: foot, x: this.left, y, face: 'regular', sizePt: SIZE.small },
          { kind: 'text', text: number, x: this.left + this.widthMm, y, face: 'regular', sizePt: SIZE.small, align: 'end' },
        ],
      };
    });
  }

  #begin(): void {
    const { title, of, shoot, revision, date } = this.#heading;
    this.#pages.push([]);
    this.#y = MARGIN.top;
    const right = this.left + this.widthMm;
    const facts = [shoot, `revision ${revision}`, date];
    const room = Math.min(this.widthMm * 0.42, Math.max(...facts.map((fact) => this.fonts.widthMm('regular', SIZE.small, fact))));
    facts.forEach((fact, at) => this.put({ kind: 'text', text: this.fonts.cut('regular', SIZE.small, fact, room), x: right, y: this.#y + 2.2 + at * 3.6, face: 'regular', sizePt: SIZE.small, align: 'end' }));
    const top = this.#y;
    const lines = this.fonts.lines('strong', SIZE.title, title, this.widthMm - room - 6);
    lines.forEach((one, at) => this.put({ kind: 'text', text: one, x: this.left, y: top + 5.6 + at * 8.4, face: 'strong', sizePt: SIZE.title }));
    this.#y = top + 8.4 * lines.length;
    for (const one of this.fonts.lines('regular', SIZE.heading, of, this.widthMm - room - 6)) {
      this.put({ kind: 'text', text: one, x: this.left, y: this.#y + 3.4, face: 'regular', sizePt: SIZE.heading });
      this.#y += 5;
    }
    this.#y = Math.max(this.#y, top + 12) + 1.4;
    this.put({ kind: 'path', d: line(this.left, this.#y, right, this.#y), stroke: RULE });
    this.#ruledAt = this.#y;
    this.#y += 4;
  }
}
