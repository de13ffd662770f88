import { eliminationOrder } from '../linear/order.ts';
import { NO_INERTIA, composite } from '../massProperties.ts';
import { type Tensor, type Vector, times } from '../vector.ts';
import type { NetworkBody } from './model.ts';

/** Bodies that move as one: bonded, or all fixed. In metres and kilograms. */
export interface Group {
  /** Places of its bodies in the model. */
  readonly members: readonly number[];
  readonly centre: Vector;
  readonly mass: number;
  readonly inertia: Tensor;
}

export interface Grouping {
  /** The groups that can move, in the order in which elimination stays small. */
  readonly groups: readonly Group[];
  /** Group of each body; −1 for what is fixed. */
  readonly groupOf: Int32Array;
  /** Groups that a spring or a beam joins to each group. */
  readonly neighbours: readonly (readonly number[])[];
}

interface Pair {
  readonly a: number;
  readonly b: number;
}

/** Merges bonded bodies into one; what is bonded to a fixed body is fixed. `links` are the pairs of bodies joined by something that gives. */
export function groupBodies(bodies: readonly NetworkBody[], bonds: readonly Pair[], links: readonly Pair[]): Grouping {
  const groups = merged(bodies, bonds).filter((members) => !members.some((i) => bodies[i]!.fixed === true));
  const order = eliminationOrder(neighboursOf(groups, links, bodies.length).neighbours);
  const ordered = order.map((g) => groups[g]!);
  return { groups: ordered.map((members) => groupFrom(members, bodies)), ...neighboursOf(ordered, links, bodies.length) };
}

/** The bodies in sets that bonds hold together. */
function merged(bodies: readonly NetworkBody[], bonds: readonly Pair[]): number[][] {
  const leader = bodies.map((_, i) => i);
  const find = (i: number): number => {
    let root = i;
    while (leader[root]! !== root) root = leader[root]!;
    leader[i] = root;
    return root;
  };
  for (const { a, b } of bonds) leader[Math.max(find(a), find(b))] = Math.min(find(a), find(b));
  const byRoot = new Map<number, number[]>();
  for (const i of bodies.keys()) {
    const set = byRoot.get(find(i));
    if (set === undefined) byRoot.set(find(i), [i]);
    else set.push(i);
  }
  return [...byRoot.values()];
}

function neighboursOf(groups: readonly (readonly number[])[], links: readonly Pair[], count: number): Pick<Grouping, 'groupOf' | 'neighbours'> {
  const groupOf = new Int32Array(count).fill(-1);
  groups.forEach((members, g) => members.forEach((i) => (groupOf[i] = g)));
  const neighbours = groups.map(() => new Set<number>());
  for (const { a, b } of links) {
    const [ga, gb] = [groupOf[a]!, groupOf[b]!];
    if (ga < 0 || gb < 0 || ga === gb) continue;
    neighbours[ga]!.add(gb);
    neighbours[gb]!.add(ga);
  }
  return { groupOf, neighbours: neighbours.map((set) => [...set]) };
}

function groupFrom(members: readonly number[], bodies: readonly NetworkBody[]): Group {
  const all = members.map((i) => ({ massG: bodies[i]!.massG ?? 0, centreMm: bodies[i]!.centreMm, inertiaKgM2: bodies[i]!.inertiaKgM2 ?? NO_INERTIA }));
  const { massG, centreMm, inertiaKgM2 } = all.length === 1 ? all[0]! : composite(all);
  return { members, centre: times(centreMm, 1e-3), mass: massG * 1e-3, inertia: inertiaKgM2 };
}
