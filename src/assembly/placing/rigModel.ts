import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { SETTING_KEYS, type Setting } from '../../shoot/schema/build.ts';
import type { Point } from '../../shoot/schema/mechanics.ts';
import { setupPieces } from '../setupPieces.ts';
import { type SettingValues, pointFrame } from './jointFrame.ts';
import { type RigJoint, rigJoints } from './rigJoints.ts';
import type { Transform } from './Transform.ts';

export type SettingKey = (typeof SETTING_KEYS)[number];

/** A setting that the program finds. */
export interface Variable {
  readonly joint: RigJoint;
  readonly key: SettingKey;
  readonly scope: 'perLens' | 'shared';
  readonly low: number;
  readonly high: number;
  readonly start: number;
}

/** A joint with its frames and what is known of its settings. */
export interface ModelJoint {
  readonly joint: RigJoint;
  readonly frameA: Transform;
  readonly frameB: Transform;
  /** Values that are stated; variables come on top. */
  readonly fixed: SettingValues;
  readonly variables: readonly Variable[];
}

/** One step of placing: `child` stands where its joint to `parent` puts it. */
export interface TreeStep extends ModelJoint {
  readonly parent: string;
  readonly child: string;
  /** The child is end `a` of the joint. */
  readonly flipped: boolean;
}

export interface Unplaced {
  readonly ref: string;
  /** In words that follow the piece's name. */
  readonly why: string;
}

/** A setup as a tree from each build's root, with what closes loops and what meshes set apart. */
export interface RigModel {
  readonly setup: string;
  readonly glass: string;
  readonly roots: readonly string[];
  readonly tree: readonly TreeStep[];
  readonly loops: readonly ModelJoint[];
  readonly meshes: readonly ModelJoint[];
  readonly unplaced: readonly Unplaced[];
  readonly variables: readonly Variable[];
}

/** Without a range of its own, a setting is looked for this far either way. */
const WIDEST: Readonly<Record<SettingKey, number>> = { turnDeg: 180, tiltDeg: 90, slideMm: 300, sideMm: 100, heightMm: 200 };

export function rigModel(ledger: Ledger, setup: string, glass: string): RigModel {
  return ledger.cell(`rig model|${setup}|${glass}`, () => {
    const pieces = setupPieces(ledger, setup, glass);
    const all = rigJoints(ledger, setup, glass).joints.flatMap((joint) => modelJoint(joint, glass) ?? []);
    const fixings = all.filter(({ joint }) => !joint.mesh && joint.fault === undefined);
    const roots = rootsOf(ledger, setup, new Set(pieces.keys()));
    const { tree, used } = spanningTree(roots, fixings);
    const placed = new Set([...roots, ...tree.map(({ child }) => child)]);
    const bothPlaced = ({ joint }: ModelJoint) => placed.has(joint.a.ref) && placed.has(joint.b.ref);
    const loops = fixings.filter((one) => !used.has(one) && bothPlaced(one));
    const meshes = all.filter((one) => one.joint.mesh && bothPlaced(one));
    const variables = [...tree, ...loops, ...meshes].flatMap((one) => one.variables);
    return { setup, glass, roots, tree, loops, meshes, unplaced: unplacedPieces(pieces.keys(), placed, ledger, setup, glass), variables };
  });
}

function rootsOf(ledger: Ledger, setup: string, known: ReadonlySet<string>): string[] {
  const builds = [ledger.at(`setups/${setup}/camera`) as string, ...((ledger.at(`setups/${setup}/stations`) ?? []) as readonly string[])];
  return builds.flatMap((build) => {
    const root = (ledger.at(`builds/${build}/root`) ?? ledger.at(`builds/${build}/camera`) ?? ledger.keys(`builds/${build}/pieces`)[0]) as string | undefined;
    return root !== undefined && known.has(`${build}/${root}`) ? [`${build}/${root}`] : [];
  });
}

/** Breadth first from the roots: the shortest way to each piece; among equals the first by name, so that the file's order is nothing. */
function spanningTree(roots: readonly string[], fixings: readonly ModelJoint[]): { tree: TreeStep[]; used: Set<ModelJoint> } {
  const tree: TreeStep[] = [];
  const used = new Set<ModelJoint>();
  const reached = new Set(roots);
  // A support that only pushes does not carry: it closes a loop where it can, and holds a piece only where nothing else does.
  for (const pushing of [false, true]) {
    let front = [...reached];
    while (front.length > 0) {
      const next: string[] = [];
      for (const one of fixings) {
        const { a, b } = one.joint;
        if (used.has(one) || (!pushing && onlyPushes(one))) continue;
        const flipped = !reached.has(a.ref) && front.includes(b.ref);
        if (!flipped && !(front.includes(a.ref) && !reached.has(b.ref))) continue;
        const [parent, child] = flipped ? [b.ref, a.ref] : [a.ref, b.ref];
        tree.push({ ...one, parent, child, flipped });
        used.add(one);
        reached.add(child);
        next.push(child);
      }
      front = next;
    }
  }
  return { tree, used };
}

export const onlyPushes = ({ joint }: ModelJoint): boolean => joint.a.point.kind === 'surface' || joint.b.point.kind === 'surface';

function modelJoint(joint: RigJoint, glass: string): ModelJoint | undefined {
  const [frameA, frameB] = [pointFrame(joint.a.point), pointFrame(joint.b.point)];
  if (frameA === undefined || frameB === undefined) return undefined;
  const fixed: SettingValues = {};
  const variables: Variable[] = [];
  for (const key of SETTING_KEYS) {
    const setting = joint.settings[key];
    if (setting === undefined) continue;
    const value = statedValue(setting, glass);
    if (value !== undefined) fixed[key] = value;
    else if (typeof setting === 'object' && 'auto' in setting) variables.push(variableOf(joint, key, setting));
  }
  return { joint, frameA, frameB, fixed, variables };
}

/** What a setting is for a glass where it is stated: a number, or pinned. */
function statedValue(setting: Setting, glass: string): number | undefined {
  if (typeof setting === 'number') return setting;
  return 'pinned' in setting ? (setting.pinned[glass] ?? setting.otherwise ?? 0) : undefined;
}

function variableOf(joint: RigJoint, key: SettingKey, setting: Extract<Setting, { auto: string }>): Variable {
  const range = (joint.a.point[key as keyof Point] ?? joint.b.point[key as keyof Point]) as readonly [number, number] | undefined;
  const low = setting.low ?? range?.[0] ?? -WIDEST[key];
  const high = setting.high ?? range?.[1] ?? WIDEST[key];
  return { joint, key, scope: setting.auto, low, high, start: setting.start ?? (low <= 0 && high >= 0 ? 0 : (low + high) / 2) };
}

function unplacedPieces(refs: Iterable<string>, placed: ReadonlySet<string>, ledger: Ledger, setup: string, glass: string): Unplaced[] {
  const { joints } = rigJoints(ledger, setup, glass);
  return [...refs].filter((ref) => !placed.has(ref)).map((ref) => {
    const own = joints.filter(({ a, b }) => a.ref === ref || b.ref === ref);
    const bad = own.find(({ fault }) => fault !== undefined);
    if (own.length === 0) return { ref, why: 'is fixed to nothing yet' };
    if (bad !== undefined) return { ref, why: `does not mate where it should: ${bad.fault}` };
    const noPlace = own.some(({ a, b }) => a.point.at === undefined || b.point.at === undefined);
    return { ref, why: noPlace ? 'is joined at a point whose place is not entered' : 'hangs on pieces that are not placed' };
  });
}
