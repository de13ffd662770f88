import { inReadingOrder } from './readingOrder.ts';
import { tabularFigures } from './tabularFigures.ts';
import { type TrueType, readTrueType } from './TrueType.ts';

export const FACES = ['regular', 'strong', 'italic'] as const;
export type Face = (typeof FACES)[number];

/** Font files as they come from whoever calls: the text faces, and a wide one for letters they lack. */
export interface FontFiles {
  readonly regular: Uint8Array;
  readonly strong: Uint8Array;
  readonly italic: Uint8Array;
  readonly wide: Uint8Array;
  readonly wideStrong: Uint8Array;
}

/** A stretch of text in one font. */
export interface Run {
  readonly font: TrueType;
  readonly glyphs: readonly number[];
  /** What each glyph stands for, for searching and copying. */
  readonly letters: readonly string[];
  readonly widthEm: number;
}

interface Glyph {
  readonly font: TrueType;
  readonly glyph: number;
  readonly widthEm: number;
}

export const MM_PER_POINT = 25.4 / 72;

/** The papers' type: letters to glyphs, with figures of one width, and how wide they run. */
export class Fonts {
  readonly #faces: Readonly<Record<Face, readonly { font: TrueType; tabular: ReadonlyMap<number, number> }[]>>;
  readonly #glyphs: Readonly<Record<Face, Map<string, Glyph>>> = { regular: new Map(), strong: new Map(), italic: new Map() };
  /** Letters met that no font has: they print as boxes, and whoever made the papers is told. */
  readonly missing = new Set<string>();

  constructor(files: FontFiles) {
    const read = (name: string, bytes: Uint8Array) => {
      const font = readTrueType(name, bytes);
      return { font, tabular: tabularFigures(font) };
    };
    const [wide, wideStrong] = [read('Wide', files.wide), read('WideStrong', files.wideStrong)];
    this.#faces = { regular: [read('Text', files.regular), wide], strong: [read('TextStrong', files.strong), wideStrong], italic: [read('TextItalic', files.italic), wide] };
  }

  /** The text as it stands on paper, left to right, in stretches of one font. */
  runs(face: Face, text: string): Run[] {
    const runs: { font: TrueType; glyphs: number[]; letters: string[]; widthEm: number }[] = [];
    for (const letter of inReadingOrder(text)) {
      const { font, glyph, widthEm } = this.#glyph(face, letter);
      let run = runs.at(-1);
      if (run === undefined || run.font !== font) {
        run = { font, glyphs: [], letters: [], widthEm: 0 };
        runs.push(run);
      }
      run.glyphs.push(glyph);
      run.letters.push(letter);
      run.widthEm += widthEm;
    }
    return runs;
  }

  widthMm(face: Face, sizePt: number, text: string): number {
    let em = 0;
    for (const letter of text) em += this.#glyph(face, letter).widthEm;
    return em * sizePt * MM_PER_POINT;
  }

  /** Lines of a text that fit a width. Breaks at spaces, inside a word only where the word alone is too wide; keeps line ends. */
  lines(face: Face, sizePt: number, text: string, widthMm: number): string[] {
    return text.split('\n').flatMap((paragraph) => this.#wrap(face, sizePt, paragraph, widthMm));
  }

  /** The text, cut with an ellipsis where it is too wide. */
  cut(face: Face, sizePt: number, text: string, widthMm: number): string {
    if (this.widthMm(face, sizePt, text) <= widthMm) return text;
    let kept = '';
    for (const letter of text) {
      if (this.widthMm(face, sizePt, `${kept}${letter}…`) > widthMm) break;
      kept += letter;
    }
    return `${kept.trimEnd()}…`;
  }

  #wrap(face: Face, sizePt: number, paragraph: string, widthMm: number): string[] {
    const lines: string[] = [];
    let line = '';
    for (const word of paragraph.split(' ')) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (this.widthMm(face, sizePt, longer) <= widthMm) {
        line = longer;
        continue;
      }
      if (line !== '') lines.push(line);
      line = '';
      for (const letter of word) {
        if (line !== '' && this.widthMm(face, sizePt, line + letter) > widthMm) {
          lines.push(line);
          line = '';
        }
        line += letter;
      }
    }
    return [...lines, line];
  }

  #glyph(face: Face, letter: string): Glyph {
    const known = this.#glyphs[face].get(letter);
    if (known !== undefined) return known;
    const codePoint = letter.codePointAt(0) ?? 0;
    const [first] = this.#faces[face];
    const having = this.#faces[face].find(({ font }) => font.glyphOf(codePoint) !== 0);
    if (having === undefined && /\P{C}/u.test(letter)) this.missing.add(letter);
    const { font, tabular } = having ?? (first as { font: TrueType; tabular: ReadonlyMap<number, number> });
    const plain = font.glyphOf(codePoint);
    const glyph = tabular.get(plain) ?? plain;
    // Marks for writing order and joining have no body.
    const bodiless = having === undefined && !/\P{C}/u.test(letter);
    const found = { font, glyph, widthEm: bodiless ? 0 : font.advanceOf(glyph) / font.unitsPerEm };
    this.#glyphs[face].set(letter, found);
    return found;
  }
}
