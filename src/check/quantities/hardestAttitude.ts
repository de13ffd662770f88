import { type Vector, add, dot, length, scale } from '../../assembly/placing/Transform.ts';
import type { Wrench } from '../../calc/mechanics/network/forces.ts';

/** What a joint carries, in its own axes, with the weight pulling along x, y and z. */
export type AlongAxes = readonly [Wrench, Wrench, Wrench];

/** What pulls a joint apart along its z, and what nods it. */
export interface PullAndNod {
  readonly pullN: number;
  readonly nodNm: number;
}

/** Less than any weight: what hangs there has none, and all attitudes are one. */
const NOTHING_N = 1e-100;

/** Angles of the nod that are looked at before the best is drawn in: what is looked for has at most two crests all round. */
const LOOKS = 24;
const DRAWN_IN = 40;

/**
 * The attitude in which pull and nod over the core of the faces are largest together. With the weight along w, a vector of length one, pull is p·w
 * and the nod about a direction u across the joint (n·u)·w: for each u the two are largest together along p + n·u / core, and are then as large
 * as that is long. So only u is searched, one angle.
 */
export function hardestAttitude(along: AlongAxes, coreM: number): PullAndNod {
  const [x, y, z] = along;
  const pull: Vector = [-x.forceN[2], -y.forceN[2], -z.forceN[2]];
  const [nodX, nodY] = [0, 1].map((k): Vector => [x.momentNm[k] as number, y.momentNm[k] as number, z.momentNm[k] as number]) as [Vector, Vector];
  const way = (angle: number): Vector => add(pull, add(scale(nodX, Math.cos(angle) / coreM), scale(nodY, Math.sin(angle) / coreM)));
  // The square of how long that is, but for p·p, which does not change with the angle.
  const [px, py] = [(2 * dot(pull, nodX)) / coreM, (2 * dot(pull, nodY)) / coreM];
  const [xx, xy, yy] = [dot(nodX, nodX) / coreM ** 2, (2 * dot(nodX, nodY)) / coreM ** 2, dot(nodY, nodY) / coreM ** 2];
  const opens = (angle: number): number => {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return px * cos + py * sin + xx * cos * cos + xy * cos * sin + yy * sin * sin;
  };
  let best = 0;
  for (let at = 1; at < LOOKS; at += 1) if (opens((2 * Math.PI * at) / LOOKS) > opens((2 * Math.PI * best) / LOOKS)) best = at;
  let [low, high] = [(2 * Math.PI * (best - 1)) / LOOKS, (2 * Math.PI * (best + 1)) / LOOKS];
  for (let step = 0; step < DRAWN_IN; step += 1) {
    const third = (high - low) / 3;
    if (opens(low + third) < opens(high - third)) low += third;
    else high -= third;
  }
  const hardest = way((low + high) / 2);
  const asked = length(hardest);
  if (asked < NOTHING_N) return { pullN: 0, nodNm: 0 };
  const w = scale(hardest, 1 / asked);
  return { pullN: Math.max(0, dot(pull, w)), nodNm: Math.hypot(dot(nodX, w), dot(nodY, w)) };
}
