import type { Place } from '../../schema/basics.ts';
import type { Point, Solid } from '../../schema/mechanics.ts';
import type { TypicalPart } from '../typicalPart.ts';

/** Where a typical part can be fixed, and what it looks like. Places as all of its figures: what such things usually have. */
export interface Fitting {
  readonly points: Record<string, Point>;
  /** Left out where the shape follows from the part's own figures, as that of a barrel, a screen or a rod. */
  readonly solids?: Solid[];
}

/** How the parts of one kind, or one class of them, are fitted out; `undefined` for what goes on nothing, as a pack in a pocket. */
export type Fit = (part: TypicalPart) => Fitting | undefined;

type Way = 'up' | 'down' | 'forward' | 'back' | 'left' | 'right';
/** Out of a point, and the direction across it that fixes the turn: lengthwise for what looks up or down, up for the rest. */
const WAYS: Readonly<Record<Way, readonly [out: Place, up: Place]>> = {
  up: [[0, 1, 0], [0, 0, 1]], down: [[0, -1, 0], [0, 0, 1]], forward: [[0, 0, 1], [0, 1, 0]], back: [[0, 0, -1], [0, 1, 0]], left: [[1, 0, 0], [0, 1, 0]], right: [[-1, 0, 0], [0, 1, 0]],
};

type Rest = Omit<Point, 'kind' | 'at' | 'out' | 'up'>;

/** A point at a place, looking a way: +X is camera left, +Y up, +Z forward. */
export function point(kind: Point['kind'], at: Place, way: Way, rest: Rest = {}): Point {
  const [out, up] = WAYS[way];
  return { kind, at: [...at], out: [...out], up: [...up], ...rest };
}

/** A tapped hole, and a screw that goes into one. */
export const tapped = (at: Place, way: Way, size = '1/4-20', rest: Rest = {}): Point => point('thread', at, way, { class: size, sex: 'female', ...rest });
export const screw = (at: Place, way: Way, size = '1/4-20', rest: Rest = {}): Point => point('hole', at, way, { class: size, sex: 'male', tool: '5 mm hex key', ...rest });
/** A seat for a 15 mm rod, closed by a lever. */
export const rodSeat = (at: Place, way: Way): Point => point('rod clamp', at, way, { class: '15 mm', sex: 'female', tool: 'hand' });

export const box = (sizeMm: Place, atMm: Place, name?: string): Solid => ({ shape: 'box', sizeMm, atMm, ...(name === undefined ? {} : { name }) });
export const cylinder = (diameterMm: number, lengthMm: number, along: 'x' | 'y' | 'z', atMm: Place): Solid => ({ shape: 'cylinder', diameterMm, lengthMm, along, atMm });
export const tube = (diameterMm: number, boreMm: number, lengthMm: number, along: 'x' | 'y' | 'z', atMm: Place): Solid => ({ shape: 'tube', diameterMm, boreMm, lengthMm, along, atMm });

/** A figure of a class: these are bare numbers. */
export const size = (of: unknown, otherwise: number): number => (typeof of === 'number' ? of : otherwise);
