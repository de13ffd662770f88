import { zlibSync } from 'fflate';
import { subset } from '../type/subset.ts';
import type { TrueType } from '../type/TrueType.ts';
import type { Run } from '../type/Fonts.ts';
import { hexUnits, type PdfObjects } from './PdfObjects.ts';

/** The fonts a file uses, each with the letters it is used for. */
export class PdfFonts {
  readonly #fonts = new Map<TrueType, { readonly key: string; readonly letters: Map<number, string> }>();

  /** A run as it stands in a page: the font's name there, and its glyphs in hex. */
  use({ font, glyphs, letters }: Run): { key: string; hex: string } {
    const known = this.#fonts.get(font) ?? { key: `F${this.#fonts.size + 1}`, letters: new Map<number, string>() };
    this.#fonts.set(font, known);
    glyphs.forEach((glyph, at) => {
      if (!known.letters.has(glyph)) known.letters.set(glyph, letters[at] ?? '');
    });
    return { key: known.key, hex: glyphs.map(hex4).join('') };
  }

  /** Writes the fonts; gives the entries for a page's resources. */
  write(objects: PdfObjects): string {
    return [...this.#fonts].map(([font, { key, letters }]) => `/${key} ${fontObject(objects, font, letters)} 0 R`).join(' ');
  }
}

const hex4 = (value: number): string => value.toString(16).toUpperCase().padStart(4, '0');

function fontObject(objects: PdfObjects, font: TrueType, letters: ReadonlyMap<number, string>): number {
  const perThousand = (units: number) => Math.round((units * 1000) / font.unitsPerEm);
  const glyphs = [...letters.keys()].toSorted((a, b) => a - b);
  const file = subset(font, glyphs);
  const name = `${tagOf(glyphs)}+${font.name}`;
  const bytes = objects.stream(`/Length1 ${file.length} `, zlibSync(file, { level: 6 }));
  const descriptor = objects.add(
    `<< /Type /FontDescriptor /FontName /${name} /Flags 4 /FontBBox [${font.box.map(perThousand).join(' ')}] /ItalicAngle ${font.name.endsWith('Italic') ? -10 : 0} `
    + `/Ascent ${perThousand(font.ascent)} /Descent ${perThousand(font.descent)} /CapHeight ${perThousand(font.capHeight)} /StemV ${font.name.endsWith('Strong') ? 120 : 80} /FontFile2 ${bytes} 0 R >>`,
  );
  const widths = glyphs.map((glyph) => `${glyph} [${perThousand(font.advanceOf(glyph))}]`).join(' ');
  const descendant = objects.add(
    `<< /Type /Font /Subtype /CIDFontType2 /BaseFont /${name} /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor ${descriptor} 0 R /W [${widths}] /CIDToGIDMap /Identity >>`,
  );
  const meaning = objects.stream('', zlibSync(Uint8Array.from(meaningOf(glyphs, letters), (letter) => letter.codePointAt(0) ?? 63), { level: 6 }));
  return objects.add(`<< /Type /Font /Subtype /Type0 /BaseFont /${name} /Encoding /Identity-H /DescendantFonts [${descendant} 0 R] /ToUnicode ${meaning} 0 R >>`);
}

/** Six letters that tell apart subsets of one font, as the format wants them; from the glyphs, so that the same text gives the same. */
function tagOf(glyphs: readonly number[]): string {
  let sum = 7;
  for (const glyph of glyphs) sum = (sum * 31 + glyph) % 308_915_776; // 26^6
  return Array.from({ length: 6 }, (_, at) => String.fromCodePoint(65 + (Math.floor(sum / 26 ** at) % 26))).join('');
}

function meaningOf(glyphs: readonly number[], letters: ReadonlyMap<number, string>): string {
  const rows = glyphs.filter((glyph) => (letters.get(glyph) ?? '') !== '').map((glyph) => `<${hex4(glyph)}> <${hexUnits(letters.get(glyph) ?? '').join('')}>`);
  const blocks = Array.from({ length: Math.ceil(rows.length / 100) }, (_, at) => rows.slice(at * 100, at * 100 + 100));
  return [
    '/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def',
    '1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange',
    ...blocks.map((block) => `${block.length} beginbfchar\n${block.join('\n')}\nendbfchar`),
    'endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n',
  ].join('\n');
}
