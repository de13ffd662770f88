import type { Mark } from '../ink/Mark.ts';
import { type XY, circle, line } from '../ink/path.ts';
import { HAIRLINE } from '../sheet/look.ts';
import { type RigView, middleOf, seenSpots } from './drawRig.ts';

const RADIUS_MM = 2;
const APART_MM = 4.2;

/** Where a view is drawn: its top left corner on the page, and how many times as large. */
export interface Drawn {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** Numbers on the pieces, kept apart: on what the view shows of each; a piece of which it shows nothing has its number beside its middle where no other view shows it. */
export function numbered(seen: RigView, refs: readonly string[], { x, y, scale }: Drawn, shownElsewhere: (ref: string) => boolean): Mark[] {
  const onPage = (at: XY): XY => ({ x: x + (at.x - seen.box.left) * scale, y: y + (at.y - seen.box.top) * scale });
  const taken: XY[] = [];
  const isFree = (spot: XY): boolean => taken.every((other) => Math.hypot(other.x - spot.x, other.y - spot.y) > APART_MM);
  const leaders: Mark[] = [];
  const numbers: Mark[] = [];
  // Those of which least is shown choose first.
  const spots = refs.map((ref, at) => ({ ref, number: String(at + 1), shown: seenSpots(seen, ref).map(onPage) })).toSorted((a, b) => a.shown.length - b.shown.length);
  for (const { ref, number, shown } of spots) {
    const middle = middleOf(seen, ref);
    if (middle === undefined || (shown.length === 0 && shownElsewhere(ref))) continue;
    const at = shown.find(isFree) ?? about(shown[0] ?? onPage(middle)).find(isFree) ?? onPage(middle);
    taken.push(at);
    if (!shown.includes(at)) leaders.push(leader(shown[0] ?? onPage(middle), at));
    numbers.push({ kind: 'path', d: circle(at, RADIUS_MM), fill: 1, stroke: HAIRLINE }, { kind: 'text', text: number, x: at.x, y: at.y + 0.95, face: 'regular', sizePt: 6.5, align: 'middle' });
  }
  return [...leaders, ...numbers];
}

const leader = (from: XY, to: XY): Mark => ({ kind: 'path', d: line(from.x, from.y, to.x, to.y), stroke: HAIRLINE });

/** Places round about one, ever further out. */
const about = ({ x, y }: XY): XY[] => Array.from({ length: 40 }, (_, k) => ({ x: x + 5 * Math.cos(k * 2.4) * (1 + k / 6), y: y + 5 * Math.sin(k * 2.4) * (1 + k / 6) }));
