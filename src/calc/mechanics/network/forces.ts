import { type Tensor, type Vector, ZERO, cross, minus, outOf, plus, times } from '../vector.ts';
import type { Element } from './element.ts';
import { endMotion } from './ends.ts';
import type { Frame } from './Frame.ts';
import type { NetworkLoad } from './model.ts';
import type { Motion } from './Motion.ts';

/** A force and a moment at a place. */
export interface Wrench {
  readonly forceN: Vector;
  readonly momentNm: Vector;
}

/** What a joint or a beam does to the two bodies it holds, at the place where it holds each, in its own axes. */
export interface Carried {
  readonly onA: Wrench;
  readonly onB: Wrench;
  /** Its own x, y, z in the common axes. */
  readonly axes: Tensor;
}

/** A wrench about the origin of the common axes, in newtons and metres, so that wrenches add. */
interface Total {
  readonly force: Vector;
  readonly moment: Vector;
}
const NOTHING: Total = { force: ZERO, moment: ZERO };

export function carriedBy(frame: Frame, element: Element, motion: Motion): Carried {
  const ends = endMotion(frame, element, motion.unknowns);
  const pushed = element.ways === undefined ? pushedBeam(element.stiffness, ends) : pushedSpring(element.ways, ends);
  const triple = (from: number): Vector => [-pushed[from]!, -pushed[from + 1]!, -pushed[from + 2]!];
  return { onA: { forceN: triple(0), momentNm: triple(3) }, onB: { forceN: triple(6), momentNm: triple(9) }, axes: element.axes };
}

/** What the bodies do to a spring, or to a beam, at both of its ends. */
function pushedSpring(ways: Float64Array, ends: Float64Array): Float64Array {
  const pushed = new Float64Array(12);
  for (let i = 0; i < 6; i++) {
    pushed[i] = ways[i]! * ends[i]! - ways[i]! * ends[i + 6]!;
    pushed[i + 6] = ways[i]! * ends[i + 6]! - ways[i]! * ends[i]!;
  }
  return pushed;
}

function pushedBeam(stiffness: Float64Array, ends: Float64Array): Float64Array {
  const pushed = new Float64Array(12);
  for (let i = 0; i < 12; i++) for (let j = 0; j < 12; j++) pushed[i]! += stiffness[i * 12 + j]! * ends[j]!;
  return pushed;
}

/** Everything that acts on each body from outside the bonds: loads, springs, beams. */
function onBodies(frame: Frame, motion: Motion, loads: readonly NetworkLoad[]): Total[] {
  const totals = frame.names.map(() => NOTHING);
  const add = (body: number, place: Vector, force: Vector, moment: Vector) => {
    const now = totals[body]!;
    totals[body] = { force: plus(now.force, force), moment: plus(plus(now.moment, moment), cross(place, force)) };
  };
  loads.forEach(({ body, forceN, momentNm, atMm }, i) => {
    const index = frame.indexOf(body, `loads/${i}/body`);
    add(index, atMm === undefined ? frame.centres[index]! : times(atMm, 1e-3), forceN ?? ZERO, momentNm ?? ZERO);
  });
  for (const element of [...frame.springs, ...frame.beams]) {
    if (element === undefined) continue;
    const { onA, onB, axes } = carriedBy(frame, element, motion);
    add(element.a, element.placeA, outOf(axes, onA.forceN), outOf(axes, onA.momentNm));
    add(element.b, element.placeB, outOf(axes, onB.forceN), outOf(axes, onB.momentNm));
  }
  return totals;
}

const sum = (totals: readonly Total[]): Total => totals.reduce(
  (all, one) => ({ force: plus(all.force, one.force), moment: plus(all.moment, one.moment) }), NOTHING,
);
const at = ({ force, moment }: Total, place: Vector): Wrench => ({ forceN: force, momentNm: minus(moment, cross(place, force)) });

/**
 * What each bond does to its body `b`, in the common axes, at its place, from the balance of what hangs behind it.
 * `undefined` where another way round shares the load: rigid bodies cannot tell how.
 */
export function bondWrenches(frame: Frame, motion: Motion, loads: readonly NetworkLoad[]): (Wrench | undefined)[] {
  const totals = onBodies(frame, motion, loads);
  return frame.bonds.map(({ a, b, place }, index) => {
    const behindB = reachable(frame, b, index);
    if (behindB.has(a)) return undefined;
    const grounded = (set: ReadonlySet<number>) => [...set].some((i) => frame.fixed[i]);
    if (!grounded(behindB)) return at(sum([...behindB].map((i) => negative(totals[i]!))), place);
    const behindA = reachable(frame, a, index);
    // Both sides stand on the ground by themselves: the bond may carry anything.
    return grounded(behindA) ? undefined : at(sum([...behindA].map((i) => totals[i]!)), place);
  });
}

const negative = ({ force, moment }: Total): Total => ({ force: times(force, -1), moment: times(moment, -1) });

function reachable(frame: Frame, from: number, without: number): Set<number> {
  const seen = new Set([from]);
  for (let grew = true; grew; ) {
    grew = false;
    frame.bonds.forEach(({ a, b }, index) => {
      if (index === without || seen.has(a) === seen.has(b)) return;
      seen.add(a).add(b);
      grew = true;
    });
  }
  return seen;
}

/** What the ground must give to all fixed bodies together, about a place. Equal and opposite to the loads, if nothing is amiss. */
export function reaction(frame: Frame, motion: Motion, loads: readonly NetworkLoad[], placeMm: Vector): Wrench {
  const totals = onBodies(frame, motion, loads);
  return at(negative(sum(totals.filter((_, i) => frame.grouping.groupOf[i]! < 0))), times(placeMm, 1e-3));
}
