import type { XY } from '../ink/path.ts';
import type { TrueType } from './TrueType.ts';

/** The closed outlines of a glyph in font units, y up, its curves as short straight pieces. Glyphs made of other glyphs give none. */
export function outlines({ bytes, tables, longOffsets }: TrueType, glyph: number): XY[][] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const [loca, glyf] = [tables.get('loca')?.offset ?? 0, tables.get('glyf')?.offset ?? 0];
  const place = (at: number) => (longOffsets ? view.getUint32(loca + at * 4) : view.getUint16(loca + at * 2) * 2);
  const start = glyf + place(glyph);
  const contours = place(glyph + 1) === place(glyph) ? 0 : view.getInt16(start);
  if (contours <= 0) return [];
  const ends = Array.from({ length: contours }, (_, at) => view.getUint16(start + 10 + at * 2));
  const points = pointsOf(view, start + 10 + contours * 2, (ends.at(-1) ?? 0) + 1);
  return ends.map((end, at) => flattened(points.slice(at === 0 ? 0 : (ends[at - 1] ?? 0) + 1, end + 1)));
}

interface Point extends XY {
  readonly on: boolean;
}

function pointsOf(view: DataView, at: number, count: number): Point[] {
  let place = at + 2 + view.getUint16(at);
  const flags: number[] = [];
  while (flags.length < count) {
    const flag = view.getUint8(place);
    place += 1;
    const times = (flag & 8) === 0 ? 1 : view.getUint8(place) + 1;
    if ((flag & 8) !== 0) place += 1;
    for (let time = 0; time < times; time += 1) flags.push(flag);
  }
  const along = (short: number, same: number): number[] => {
    let value = 0;
    return flags.map((flag) => {
      if ((flag & short) !== 0) {
        value += (flag & same) === 0 ? -view.getUint8(place) : view.getUint8(place);
        place += 1;
      } else if ((flag & same) === 0) {
        value += view.getInt16(place);
        place += 2;
      }
      return value;
    });
  };
  const xs = along(2, 16);
  const ys = along(4, 32);
  return flags.map((flag, index) => ({ x: xs[index] ?? 0, y: ys[index] ?? 0, on: (flag & 1) !== 0 }));
}

const PIECES = 6;

/** Between two points off the curve lies one on it, half way. */
function flattened(points: readonly Point[]): XY[] {
  const whole = points.flatMap((point, at): Point[] => {
    const next = points[(at + 1) % points.length] as Point;
    return point.on || next.on ? [point] : [point, { x: (point.x + next.x) / 2, y: (point.y + next.y) / 2, on: true }];
  });
  const first = Math.max(0, whole.findIndex(({ on }) => on));
  const turned = [...whole.slice(first), ...whole.slice(0, first)];
  return turned.flatMap((point, at): XY[] => {
    if (point.on) return [point];
    const [from, to] = [turned[at - 1] ?? point, turned[(at + 1) % turned.length] ?? point];
    return Array.from({ length: PIECES - 1 }, (_, piece) => {
      const t = (piece + 1) / PIECES;
      const [a, b, c] = [(1 - t) * (1 - t), 2 * t * (1 - t), t * t];
      return { x: a * from.x + b * point.x + c * to.x, y: a * from.y + b * point.y + c * to.y };
    });
  });
}
