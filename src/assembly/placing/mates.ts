import type { Point } from '../../shoot/schema/mechanics.ts';

/** Kinds that go together: what screws into, clamps onto or slides over what. Common practice; each row both ways. */
const PAIRS: readonly (readonly [Point['kind'], Point['kind']])[] = [
  ['thread', 'thread'], ['thread', 'hole'], ['thread', 'stud'], ['rod', 'rod clamp'], ['quick release', 'quick release'], ['wedge', 'wedge'], ['shoe', 'shoe'], ['lens mount', 'lens mount'], ['front', 'front'],
  ['gear', 'gear'], ['spud', 'spud'], ['stud', 'stud'], ['battery plate', 'battery plate'], ['collar', 'collar'], ['collar', 'front'], ['tripod plate', 'tripod plate'], ['tripod plate', 'thread'], ['tripod plate', 'hole'],
  ['arm', 'arm'], ['surface', 'surface'], ['hand', 'hand'],
];

/** What keeps two points from mating, in words that follow "they do not mate: "; `undefined` where they do. */
export function mateFault(a: Point, b: Point): string | undefined {
  if (a.kind === 'surface' || b.kind === 'surface') return undefined;
  const pair = PAIRS.some(([one, other]) => (one === a.kind && other === b.kind) || (one === b.kind && other === a.kind));
  if (!pair) return `a ${a.kind} does not go on a ${b.kind}`;
  if (a.class !== undefined && b.class !== undefined && a.class !== b.class) return `${a.class} against ${b.class}`;
  const sexed = a.sex !== undefined && b.sex !== undefined && a.sex !== 'neutral' && b.sex !== 'neutral';
  if (sexed && a.sex === b.sex && a.kind !== 'gear') return a.sex === 'male' ? 'both are male' : 'both are female';
  return undefined;
}

/** Points along which a joint slides lengthwise: on these `slideMm` runs along the rod, elsewhere along the point's `up`. */
export const slidesAlongOut = (kind: Point['kind']): boolean => kind === 'rod' || kind === 'rod clamp';
