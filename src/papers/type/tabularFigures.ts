import type { TrueType } from './TrueType.ts';

/**
 * The font's figures of one width, by the glyph they stand for: the single substitutions of its OpenType feature `tnum`. Empty
 * where the font has none.
 */
export function tabularFigures({ bytes, tables }: TrueType): ReadonlyMap<number, number> {
  const start = tables.get('GSUB')?.offset;
  const found = new Map<number, number>();
  if (start === undefined) return found;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const [features, lookups] = [start + view.getUint16(start + 6), start + view.getUint16(start + 8)];
  for (let at = 0; at < view.getUint16(features); at += 1) {
    const entry = features + 2 + at * 6;
    if (view.getUint32(entry) !== 0x74_6E_75_6D) continue; // "tnum"
    const feature = features + view.getUint16(entry + 4);
    for (let which = 0; which < view.getUint16(feature + 2); which += 1) {
      singles(view, lookups + view.getUint16(lookups + 2 + view.getUint16(feature + 4 + which * 2) * 2), found);
    }
  }
  return found;
}

function singles(view: DataView, lookup: number, found: Map<number, number>): void {
  if (view.getUint16(lookup) !== 1) return;
  for (let at = 0; at < view.getUint16(lookup + 4); at += 1) {
    const table = lookup + view.getUint16(lookup + 6 + at * 2);
    const format = view.getUint16(table);
    covered(view, table + view.getUint16(table + 2)).forEach((glyph, order) => {
      found.set(glyph, format === 1 ? (glyph + view.getInt16(table + 4)) & 0xff_ff : view.getUint16(table + 6 + order * 2));
    });
  }
}

function covered(view: DataView, coverage: number): number[] {
  const entries = view.getUint16(coverage + 2);
  if (view.getUint16(coverage) === 1) return Array.from({ length: entries }, (_, at) => view.getUint16(coverage + 4 + at * 2));
  return Array.from({ length: entries }, (_, at) => coverage + 4 + at * 6).flatMap((range) => {
    const first = view.getUint16(range);
    return Array.from({ length: view.getUint16(range + 2) - first + 1 }, (_, step) => first + step);
  });
}
