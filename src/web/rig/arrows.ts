import { type Vector, length, scale, subtract } from '../../assembly/placing/Transform.ts';
import type { RigForces } from '../../jobs/views/rigForces.ts';

/** One force to draw and to read. */
export interface Arrow {
  readonly key: string;
  /** Its place in the list, from 1: what its arrow and its row are both called by. */
  readonly number: number;
  readonly kind: 'joint' | 'weight' | 'wind' | 'hand' | 'teeth' | 'ground';
  readonly atMm: Vector;
  readonly forceN: Vector;
  readonly momentNm: Vector;
  /** Of a joint: the piece that does it, the one it is done to, and how the two are joined. */
  readonly joint?: { readonly by: string; readonly on: string; readonly type: string };
  /** Of any other: the piece it acts on. */
  readonly ref?: string;
}

/** Everything that acts on one piece; without one, what each joint does to the piece it holds, and what acts on the rig from outside, weights after the rest. The strongest first. */
export function arrowsOf({ joints, outer }: RigForces, selected: string | undefined): Arrow[] {
  const own = outer.filter(({ ref }) => selected === undefined || ref === selected).map((one, at): Unnumbered => ({ ...one, key: `outer ${at}` }));
  const held = joints.flatMap(({ path, by, on, type, ...force }): Unnumbered[] => {
    const arrow: Unnumbered = { ...force, key: path, kind: 'joint', joint: { by, on, type } };
    if (selected === undefined || on === selected) return [arrow];
    if (by !== selected) return [];
    return [{ ...arrow, forceN: scale(force.forceN, -1), momentNm: scale(force.momentNm, -1), joint: { by: on, on: by, type } }];
  });
  const last = ({ kind }: Unnumbered): number => (selected === undefined && kind === 'weight' ? 1 : 0);
  return [...held, ...own].toSorted((a, b) => last(a) - last(b) || length(b.forceN) - length(a.forceN)).map((arrow, at) => ({ ...arrow, number: at + 1 }));
}

type Unnumbered = Omit<Arrow, 'number'>;

/** From the outermost place where something acts to the furthest from it: what arrows are sized by. */
export function spanMm({ joints, outer }: RigForces): number {
  const places = [...joints, ...outer].map(({ atMm }) => atMm);
  const first = places[0] ?? [0, 0, 0];
  return Math.max(100, ...places.map((one) => length(subtract(one, first))));
}

const WORDS: readonly (readonly [string, string])[] = [['to camera left', 'to camera right'], ['up', 'down'], ['ahead', 'back']];

/** Which way a force goes, as seen by the camera: the one or two directions that it mostly has. */
export function wayWords(forceN: Vector): string {
  const size = length(forceN);
  if (size < 1e-6) return '';
  const parts = forceN.map((one, k) => ({ share: Math.abs(one) / size, says: WORDS[k]?.[one > 0 ? 0 : 1] ?? '' })).toSorted((a, b) => b.share - a.share);
  return parts.filter(({ share }, at) => at === 0 || (at === 1 && share > 0.35)).map(({ says }) => says).join(' and ');
}
