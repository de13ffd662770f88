import type { TrueType } from './TrueType.ts';

const KEPT = ['head', 'hhea', 'maxp', 'cvt ', 'fpgm', 'prep', 'hmtx'] as const;

/** A font file with the outlines of some glyphs only, under their own numbers: a sheet of text carries a few kB of font. */
export function subset(font: TrueType, wanted: Iterable<number>): Uint8Array {
  const view = new DataView(font.bytes.buffer, font.bytes.byteOffset, font.bytes.byteLength);
  const outlines = (font.tables.get('glyf') as { offset: number }).offset;
  const places = (font.tables.get('loca') as { offset: number }).offset;
  const placeOf = (glyph: number) => (font.longOffsets ? view.getUint32(places + glyph * 4) : view.getUint16(places + glyph * 2) * 2);
  const kept = withParts(view, wanted, (glyph) => [outlines + placeOf(glyph), placeOf(glyph + 1) - placeOf(glyph)]);
  const loca = new DataView(new ArrayBuffer((font.glyphs + 1) * 4));
  const pieces: Uint8Array[] = [];
  let length = 0;
  for (let glyph = 0; glyph < font.glyphs; glyph += 1) {
    loca.setUint32(glyph * 4, length);
    if (!kept.has(glyph)) continue;
    const size = placeOf(glyph + 1) - placeOf(glyph);
    pieces.push(font.bytes.subarray(outlines + placeOf(glyph), outlines + placeOf(glyph) + size), new Uint8Array((4 - (size % 4)) % 4));
    length += Math.ceil(size / 4) * 4;
  }
  loca.setUint32(font.glyphs * 4, length);
  const tables = KEPT.flatMap((tag) => {
    const table = font.tables.get(tag);
    return table === undefined ? [] : [[tag, font.bytes.slice(table.offset, table.offset + table.length)] as const];
  });
  const head = new Map(tables).get('head');
  if (head !== undefined) new DataView(head.buffer).setInt16(50, 1);
  return fontFile([...tables, ['loca', new Uint8Array(loca.buffer)], ['glyf', joined(pieces)]]);
}

/** Accented letters are made of other glyphs, which must come along. */
function withParts(view: DataView, wanted: Iterable<number>, outlineOf: (glyph: number) => readonly [number, number]): Set<number> {
  const kept = new Set<number>();
  const waiting = [0, ...wanted];
  for (let glyph = waiting.pop(); glyph !== undefined; glyph = waiting.pop()) {
    if (kept.has(glyph)) continue;
    kept.add(glyph);
    const [at, size] = outlineOf(glyph);
    if (size > 0 && view.getInt16(at) < 0) waiting.push(...partsOf(view, at));
  }
  return kept;
}

function partsOf(view: DataView, outline: number): number[] {
  const parts: number[] = [];
  let at = outline + 10;
  let flags: number;
  do {
    flags = view.getUint16(at);
    parts.push(view.getUint16(at + 2));
    const scale = (flags & 0x8) !== 0 ? 2 : (flags & 0x40) !== 0 ? 4 : (flags & 0x80) !== 0 ? 8 : 0;
    at += 4 + ((flags & 0x1) === 0 ? 2 : 4) + scale;
  } while ((flags & 0x20) !== 0);
  return parts;
}

function fontFile(tables: readonly (readonly [tag: string, bytes: Uint8Array])[]): Uint8Array {
  const sorted = tables.toSorted(([a], [b]) => (a < b ? -1 : 1));
  const power = Math.floor(Math.log2(sorted.length));
  const header = new Uint8Array(12 + sorted.length * 16);
  const view = new DataView(header.buffer);
  view.setUint32(0, 0x1_00_00);
  view.setUint16(4, sorted.length);
  view.setUint16(6, 2 ** power * 16);
  view.setUint16(8, power);
  view.setUint16(10, sorted.length * 16 - 2 ** power * 16);
  let offset = header.length;
  const bodies = sorted.map(([tag, bytes], at) => {
    const padded = new Uint8Array(Math.ceil(bytes.length / 4) * 4);
    padded.set(bytes);
    const entry = 12 + at * 16;
    for (let letter = 0; letter < 4; letter += 1) header[entry + letter] = tag.codePointAt(letter) ?? 32;
    view.setUint32(entry + 4, checksum(padded));
    view.setUint32(entry + 8, offset);
    view.setUint32(entry + 12, bytes.length);
    offset += padded.length;
    return padded;
  });
  return joined([header, ...bodies]);
}

function checksum(padded: Uint8Array): number {
  const view = new DataView(padded.buffer);
  let sum = 0;
  for (let at = 0; at < padded.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}

/** Pieces of bytes end to end. */
export function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
