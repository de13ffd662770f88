import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { SETTING_KEYS, type Setting } from '../../shoot/schema/build.ts';
import type { Point } from '../../shoot/schema/mechanics.ts';
import { type SettingKey, axisOf, holdRank, onlyPushes as pushes } from '../mates.ts';
import { setupPieces } from '../setupPieces.ts';
import { type GearPair, gearPair } from './gears.ts';
import { type SettingValues, pointFrame } from './jointFrame.ts';
import { type RigJoint, rigJoints } from './rigJoints.ts';
import { type TouchRange, touchRange } from './touchRange.ts';
import { type Transform, inverse } from './Transform.ts';

export type { SettingKey } from '../mates.ts';

/** A setting that is found rather than stated. */
export interface Variable {
  /** Joint and setting, the same in every glass. */
  readonly id: string;
  readonly joint: RigJoint;
  readonly key: SettingKey;
  /** `free`: nothing states it; it gives way only where something would not fit otherwise. */
  readonly scope: 'perLens' | 'shared' | 'free';
  /** `last`: gives way after all else, as a camera on its plate. */
  readonly givesWay: 'first' | 'last';
  readonly low: number;
  readonly high: number;
  readonly start: number;
  /** Whether its range is entered; where not, it is looked for within reason. */
  readonly rangeKnown: boolean;
}

/** A setting that is stated beyond the range of its point. */
export interface BeyondRange {
  readonly joint: RigJoint;
  readonly key: SettingKey;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** A joint between two points that have places. Settings of the file are counted where they are free (`guide`); here all are seen from `a`. */
export interface ModelJoint {
  readonly joint: RigJoint;
  readonly frameA: Transform;
  readonly frameB: Transform;
  readonly backA: Transform;
  readonly backB: Transform;
  readonly fixed: SettingValues;
  readonly variables: readonly Variable[];
  /** Settings counted on end `b`, against the way of end `a`. */
  readonly turned: ReadonlySet<SettingKey>;
  readonly beyond: readonly BeyondRange[];
  /** Of what only touches: how far beside point `a`, across and along, point `b` may lie. */
  readonly touches: TouchRange | undefined;
}

/** One step of placing: `child` stands where its joint to `parent` puts it. */
export interface TreeStep extends ModelJoint {
  readonly parent: string;
  readonly child: string;
  /** The child is end `a` of the joint. */
  readonly flipped: boolean;
}

/** Two gears that are to turn each other. */
export interface ModelMesh extends ModelJoint {
  readonly pair: GearPair | undefined;
}

export interface Unplaced {
  /** `build/piece`. */
  readonly ref: string;
  /** In words that follow the piece's name: "is fixed to nothing yet". */
  readonly why: string;
  /** Pieces of the tray that hang together have the same number. */
  readonly heap: number;
}

/** A setup with one of its glasses as a tree from each build's root, with what closes loops and what meshes set apart. */
export interface RigModel {
  readonly setup: string;
  readonly glass: string;
  readonly roots: readonly string[];
  readonly tree: readonly TreeStep[];
  readonly stepTo: ReadonlyMap<string, TreeStep>;
  readonly loops: readonly ModelJoint[];
  readonly meshes: readonly ModelMesh[];
  readonly unplaced: readonly Unplaced[];
  /** Everything that could be found, whether or not it had to be. */
  readonly variables: readonly Variable[];
}

export function rigModel(ledger: Ledger, setup: string, glass: string): RigModel {
  return ledger.cell(`rig model|${setup}|${glass}`, () => {
    const refs = [...setupPieces(ledger, setup, glass).keys()];
    const all = rigJoints(ledger, setup, glass).joints.flatMap((joint) => modelJoint(joint, glass) ?? []);
    const fixings = all.filter(({ joint }) => !joint.mesh);
    const roots = rootsOf(ledger, setup, new Set(refs));
    const { tree, used } = spanningTree(roots, fixings);
    const placed = new Set([...roots, ...tree.map(({ child }) => child)]);
    const whole = ({ joint }: ModelJoint): boolean => placed.has(joint.a.ref) && placed.has(joint.b.ref) && sameBuild(joint);
    const loops = fixings.filter((one) => !used.has(one) && whole(one));
    return {
      setup, glass, roots, tree, loops,
      variables: [...tree, ...loops].flatMap(({ variables }) => variables),
      stepTo: new Map(tree.map((step) => [step.child, step])),
      meshes: all.filter((one) => one.joint.mesh && whole(one)).map((one) => ({ ...one, pair: gearPair(one.joint.a.piece, one.joint.b.piece) })),
      unplaced: trayOf(refs, placed, ledger, setup, glass),
    };
  });
}

const sameBuild = ({ a, b }: RigJoint): boolean => a.piece.build === b.piece.build;

function rootsOf(ledger: Ledger, setup: string, known: ReadonlySet<string>): string[] {
  const builds = [ledger.at(`setups/${setup}/camera`) as string, ...((ledger.at(`setups/${setup}/stations`) ?? []) as readonly string[])];
  return builds.flatMap((build) => {
    const root = (ledger.at(`builds/${build}/root`) ?? ledger.at(`builds/${build}/camera`) ?? ledger.keys(`builds/${build}/pieces`).toSorted()[0]) as string | undefined;
    return root !== undefined && known.has(`${build}/${root}`) ? [`${build}/${root}`] : [];
  });
}

/**
 * From the roots outwards: always the joint that holds best, then the one nearest the root, then the first by its path, so that the file's
 * order is nothing and what only guides or touches is left to close loops.
 */
function spanningTree(roots: readonly string[], fixings: readonly ModelJoint[]): { tree: TreeStep[]; used: Set<ModelJoint> } {
  const tree: TreeStep[] = [];
  const used = new Set<ModelJoint>();
  const depth = new Map(roots.map((root) => [root, 0]));
  const around = new Map<string, ModelJoint[]>();
  for (const one of fixings) {
    if (!sameBuild(one.joint)) continue;
    for (const { ref } of [one.joint.a, one.joint.b]) around.set(ref, [...(around.get(ref) ?? []), one]);
  }
  const open = new Map<ModelJoint, Open>();
  const reach = (ref: string): void => {
    for (const one of around.get(ref) ?? []) if (!used.has(one) && !open.has(one)) open.set(one, { one, rank: rankOf(one), depth: depth.get(ref) ?? 0 });
  };
  roots.forEach(reach);
  while (open.size > 0) {
    let first: Open | undefined;
    for (const each of open.values()) if (first === undefined || isBefore(each, first)) first = each;
    const next = (first as Open).one;
    open.delete(next);
    const { a, b } = next.joint;
    const flipped = !depth.has(a.ref);
    if (!flipped && depth.has(b.ref)) continue;
    const [parent, child] = flipped ? [b.ref, a.ref] : [a.ref, b.ref];
    tree.push({ ...next, parent, child, flipped });
    used.add(next);
    depth.set(child, (depth.get(parent) ?? 0) + 1);
    reach(child);
  }
  return { tree, used };
}

/** A joint that could be the next, by how well it holds and how far it is from a root. */
interface Open {
  readonly one: ModelJoint;
  readonly rank: number;
  readonly depth: number;
}

const isBefore = (a: Open, b: Open): boolean => (a.rank !== b.rank ? a.rank < b.rank : a.depth !== b.depth ? a.depth < b.depth : a.one.joint.path < b.one.joint.path);
const rankOf = ({ joint: { a, b } }: ModelJoint): number => Math.max(holdRank(a.point.kind), holdRank(b.point.kind));

/** Without a range of its own, a setting that is to be found is looked for this far either way. */
const WITHIN: Readonly<Record<SettingKey, number>> = { turnDeg: 180, tiltDeg: 90, slideMm: 300, sideMm: 100, heightMm: 200 };
/** Joints that one sets wherever they are wanted, stated or not: clamps on rods, collars, arms, what only touches. */
const SET_TO_SUIT: ReadonlySet<Point['kind']> = new Set(['rod', 'rod clamp', 'collar', 'arm']);

function modelJoint(joint: RigJoint, glass: string): ModelJoint | undefined {
  const [frameA, frameB] = [pointFrame(joint.a.point), pointFrame(joint.b.point)];
  if (frameA === undefined || frameB === undefined) return undefined;
  const fixed: SettingValues = {};
  const variables: Variable[] = [];
  const beyond: BeyondRange[] = [];
  const turned = new Set(SETTING_KEYS.filter((key) => countedOnB(joint, key)));
  for (const key of SETTING_KEYS) {
    const setting = joint.settings[key];
    const range = rangeOf(joint, key);
    const value = statedValue(setting, glass);
    if (value !== undefined) {
      fixed[key] = turned.has(key) ? -value : value;
      if (range !== undefined && (value < range[0] - 1e-6 || value > range[1] + 1e-6)) beyond.push({ joint, key, value, low: range[0], high: range[1] });
      continue;
    }
    const variable = typeof setting === 'object' && 'auto' in setting ? foundVariable(joint, key, setting, range) : freeVariable(joint, key, range);
    if (variable !== undefined) variables.push(variable);
  }
  const touches = onlyPushes({ joint }) ? touchRange(joint.a, joint.b) : undefined;
  return { joint, frameA, frameB, backA: inverse(frameA), backB: inverse(frameB), fixed, variables, turned, beyond, touches };
}

/** What a setting is for a glass where it is stated: a number, or pinned. */
function statedValue(setting: Setting | undefined, glass: string): number | undefined {
  if (typeof setting !== 'object') return setting;
  return 'pinned' in setting ? (setting.pinned[glass] ?? setting.otherwise) : undefined;
}

/**
 * A setting says where the other piece sits on the one that is free to move along: on `a`, but where only `b` has the range, on `b`.
 * Only what runs along `up` looks different from there.
 */
function countedOnB({ a, b }: RigJoint, key: SettingKey): boolean {
  if (key === 'turnDeg' || key === 'tiltDeg' || axisOf(a.point.kind, key) !== 1) return false;
  return a.point[key] === undefined && b.point[key] !== undefined;
}

/** Both ends may give: then their ranges add. `undefined` where neither states one. */
export function rangeOf({ a, b }: RigJoint, key: SettingKey): readonly [number, number] | undefined {
  const [own, other] = [a.point[key], b.point[key]];
  if (own === undefined || other === undefined) return own ?? other;
  const opposed = key !== 'turnDeg' && key !== 'tiltDeg' && axisOf(a.point.kind, key) === 1;
  return opposed ? [own[0] - other[1], own[1] - other[0]] : [own[0] + other[0], own[1] + other[1]];
}

type Range = readonly [number, number] | undefined;

function foundVariable(joint: RigJoint, setting: SettingKey, auto: Extract<Setting, { auto: string }>, range: Range): Variable {
  const [low, high] = [auto.low ?? range?.[0] ?? -WITHIN[setting], auto.high ?? range?.[1] ?? WITHIN[setting]];
  const within: readonly [number, number] = [Math.max(low, range?.[0] ?? low), Math.min(high, range?.[1] ?? high)];
  const [lowest, highest] = within[0] <= within[1] ? within : [low, high];
  return {
    id: `${joint.path}/${setting}`, joint, key: setting, scope: auto.auto, givesWay: 'first', low: lowest, high: highest, start: startIn(lowest, highest, auto.start),
    rangeKnown: range !== undefined || (auto.low !== undefined && auto.high !== undefined),
  };
}

/** What nothing states but the points allow. */
function freeVariable(joint: RigJoint, setting: SettingKey, range: Range): Variable | undefined {
  const kinds = [joint.a.point.kind, joint.b.point.kind];
  const toSuit = kinds.every((kind) => SET_TO_SUIT.has(kind));
  const free = range ?? (setting === 'turnDeg' && kinds.every((kind) => kind !== 'collar') && toSuit ? ([-180, 180] as const) : undefined);
  if (free === undefined || joint.implied || (setting !== 'heightMm' && onlyPushes({ joint }))) return undefined;
  return { id: `${joint.path}/${setting}`, joint, key: setting, scope: 'free', givesWay: toSuit ? 'first' : 'last', low: free[0], high: free[1], start: startIn(free[0], free[1]), rangeKnown: true };
}

function startIn(low: number, high: number, start = low <= 0 && high >= 0 ? 0 : low > 0 ? low : high): number {
  return Math.min(Math.max(start, low), high);
}

/** A support that only pushes: it closes a gap, and holds nothing else. */
export const onlyPushes = ({ joint: { a, b } }: Pick<ModelJoint, 'joint'>): boolean => pushes(a.point, b.point);

/** What is not placed, and why; pieces that hang together lie in one heap. */
function trayOf(refs: readonly string[], placed: ReadonlySet<string>, ledger: Ledger, setup: string, glass: string): Unplaced[] {
  const left = refs.filter((ref) => !placed.has(ref)).toSorted();
  if (left.length === 0) return [];
  const { joints } = rigJoints(ledger, setup, glass);
  const heaps = new Map(left.map((ref, at) => [ref, at]));
  for (let changed = true; changed; ) {
    changed = false;
    for (const { a, b, mesh } of joints) {
      const [one, other] = [heaps.get(a.ref), heaps.get(b.ref)];
      if (mesh || one === undefined || other === undefined || one === other) continue;
      heaps.set(a.ref, Math.min(one, other));
      heaps.set(b.ref, Math.min(one, other));
      changed = true;
    }
  }
  return left.map((ref) => ({ ref, why: whyUnplaced(ref, joints), heap: heaps.get(ref) ?? 0 }));
}

function whyUnplaced(ref: string, joints: readonly RigJoint[]): string {
  const own = joints.filter(({ a, b, mesh }) => !mesh && (a.ref === ref || b.ref === ref));
  if (own.length === 0) return 'is fixed to nothing yet';
  const vague = own.flatMap(({ a, b }) => [a, b]).find(({ point }) => point.at === undefined || point.out === undefined);
  if (vague !== undefined) return `is joined at a point of ${vague.piece.name} whose ${vague.point.at === undefined ? 'place' : 'direction'} is not entered`;
  if (own.every((joint) => !sameBuild(joint))) return 'is joined to another build only';
  return 'hangs on pieces that are fixed to nothing yet';
}
