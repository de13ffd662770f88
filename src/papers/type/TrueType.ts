/** What layout and embedding need of a TrueType file: advances, which glyph draws a letter, and the raw tables. */
export interface TrueType {
  /** The name that stands in the PDF. */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly tables: ReadonlyMap<string, { readonly offset: number; readonly length: number }>;
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly box: readonly [number, number, number, number];
  readonly glyphs: number;
  readonly longOffsets: boolean;
  /** 0 where the font has no glyph for a character. */
  readonly glyphOf: (codePoint: number) => number;
  /** Width of a glyph in font units. */
  readonly advanceOf: (glyph: number) => number;
}

/** Reads a font with outlines in a `glyf` table. Throws where the bytes are no such font: fonts come with the program. */
export function readTrueType(name: string, file: Uint8Array): TrueType {
  // A copy of a plain kind: what a caller hands over may share its memory with other things.
  const bytes = new Uint8Array(file);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tables = new Map(Array.from({ length: view.getUint16(4) }, (_, at) => {
    const entry = 12 + at * 16;
    const tag = String.fromCodePoint(...bytes.subarray(entry, entry + 4));
    return [tag, { offset: view.getUint32(entry + 8), length: view.getUint32(entry + 12) }] as const;
  }));
  const at = (tag: string): number => {
    const table = tables.get(tag);
    if (table === undefined) throw new Error(`The font ${name} has no ${tag} table; a TrueType font with outlines is needed.`);
    return table.offset;
  };
  const [head, hhea, hmtx] = [at('head'), at('hhea'), at('hmtx')];
  at('glyf');
  const measured = view.getUint16(hhea + 34);
  const os2 = tables.get('OS/2')?.offset;
  const ascent = view.getInt16(hhea + 4);
  return {
    name, bytes, tables,
    unitsPerEm: view.getUint16(head + 18),
    ascent,
    descent: view.getInt16(hhea + 6),
    capHeight: os2 !== undefined && view.getUint16(os2) >= 2 ? view.getInt16(os2 + 88) : ascent * 0.7,
    box: [view.getInt16(head + 36), view.getInt16(head + 38), view.getInt16(head + 40), view.getInt16(head + 42)],
    glyphs: view.getUint16(at('maxp') + 4),
    longOffsets: view.getInt16(head + 50) === 1,
    glyphOf: glyphFinder(view, at('cmap')),
    advanceOf: (glyph) => view.getUint16(hmtx + Math.min(glyph, measured - 1) * 4),
  };
}

/** The richest map of the font: all of Unicode where it has that, else the first plane. */
function glyphFinder(view: DataView, cmap: number): (codePoint: number) => number {
  const maps = Array.from({ length: view.getUint16(cmap + 2) }, (_, at) => cmap + view.getUint32(cmap + 8 + at * 8));
  const wide = maps.find((map) => view.getUint16(map) === 12);
  if (wide !== undefined) return (codePoint) => inGroups(view, wide, codePoint);
  const plane = maps.find((map) => view.getUint16(map) === 4);
  return plane === undefined ? () => 0 : (codePoint) => inSegments(view, plane, codePoint);
}

function inGroups(view: DataView, map: number, codePoint: number): number {
  let [low, high] = [0, view.getUint32(map + 12) - 1];
  while (low <= high) {
    const middle = (low + high) >> 1;
    const group = map + 16 + middle * 12;
    if (codePoint < view.getUint32(group)) high = middle - 1;
    else if (codePoint > view.getUint32(group + 4)) low = middle + 1;
    else return view.getUint32(group + 8) + codePoint - view.getUint32(group);
  }
  return 0;
}

function inSegments(view: DataView, map: number, codePoint: number): number {
  if (codePoint > 0xff_ff) return 0;
  const segments = view.getUint16(map + 6) / 2;
  const [ends, starts] = [map + 14, map + 16 + segments * 2];
  for (let at = 0; at < segments; at += 1) {
    if (codePoint > view.getUint16(ends + at * 2)) continue;
    const start = view.getUint16(starts + at * 2);
    if (codePoint < start) return 0;
    const delta = view.getInt16(starts + segments * 2 + at * 2);
    const place = starts + segments * 4 + at * 2;
    const range = view.getUint16(place);
    const glyph = range === 0 ? codePoint : view.getUint16(place + range + (codePoint - start) * 2);
    return glyph === 0 ? 0 : (glyph + delta) & 0xff_ff;
  }
  return 0;
}
