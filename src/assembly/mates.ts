/**
 * Which points go together. All rules of mating stand here: the kinds, what must agree between them, and the sexes; and along
 * which way of a point its free ways run. Common practice throughout.
 */
import type { SETTING_KEYS } from '../shoot/schema/build.ts';
import type { Point } from '../shoot/schema/mechanics.ts';
import { plateClass } from '../standards/plateClasses.ts';
import { spud } from '../standards/spuds.ts';
import { thread } from '../standards/threads.ts';

type Kind = Point['kind'];
export type SettingKey = (typeof SETTING_KEYS)[number];

/** How the classes of two points are compared. */
type Agreement = 'thread' | 'rod' | 'spud' | 'plate' | 'words' | 'nothing';

/** What goes on what, what must agree, and whether one must be male and the other female. */
const PAIRS: readonly (readonly [a: Kind, b: Kind, agree: Agreement, sexes: boolean])[] = [
  ['thread', 'thread', 'thread', true], ['thread', 'hole', 'thread', true], ['thread', 'stud', 'thread', true], ['stud', 'hole', 'thread', false], ['tripod plate', 'thread', 'nothing', false],
  ['tripod plate', 'tripod plate', 'plate', true], ['wedge', 'wedge', 'plate', true], ['tripod plate', 'wedge', 'plate', true], ['quick release', 'quick release', 'plate', true],
  ['battery plate', 'battery plate', 'plate', true], ['shoe', 'shoe', 'nothing', true], ['rod', 'rod clamp', 'rod', false], ['spud', 'spud', 'spud', true], ['lens mount', 'lens mount', 'words', true],
  ['front', 'front', 'words', true], ['collar', 'collar', 'words', true], ['collar', 'front', 'words', false], ['gear', 'gear', 'nothing', false], ['arm', 'arm', 'plate', false],
  ['surface', 'surface', 'nothing', false], ['hand', 'hand', 'nothing', false],
];

export interface MateFault {
  /** What does not agree. */
  readonly of: 'kind' | 'class' | 'sex';
  /** Why, as the end of a sentence: "1/4-20 does not go into 3/8-16". */
  readonly says: string;
  /** What would help, where something usual does. */
  readonly cure?: string;
}

/** What keeps two points from being joined; `undefined` where nothing does. A class or sex that is not entered stands in nobody's way. */
export function mateFault(a: Point, b: Point): MateFault | undefined {
  const pair = pairOf(a.kind, b.kind);
  if (pair === undefined) return { of: 'kind', says: `a ${a.kind} does not go on a ${b.kind}` };
  const [, , agree, sexes] = pair;
  if (a.class !== undefined && b.class !== undefined && !agrees(agree, a.class, b.class)) return classFault(agree, a.class, b.class);
  const same = a.sex !== undefined && a.sex === b.sex && a.sex !== 'neutral';
  if (sexes && same) return { of: 'sex', says: `both are ${a.sex}` };
  return undefined;
}

const pairOf = (a: Kind, b: Kind) => PAIRS.find(([one, other]) => (one === a && other === b) || (one === b && other === a));

/** The name a class goes by, whichever way it is written: `1/4"` is 1/4-20, `15 mm lightweight` a rod of 15 mm. */
const NAMED: Readonly<Record<Agreement, (name: string) => string | undefined>> = {
  thread: (name) => thread(name)?.name,
  rod: (name) => (/^\d+(\.\d+)?(?=\s?mm)/.exec(name.trim())?.[0] ?? undefined),
  spud: (name) => spud(name)?.name,
  plate: (name) => plateClass(name)?.name,
  words: () => undefined,
  nothing: () => undefined,
};

const plain = (name: string): string => name.trim().toLowerCase().replaceAll(/\s+/g, ' ');

function agrees(agreement: Agreement, a: string, b: string): boolean {
  if (agreement === 'nothing') return true;
  const named = (name: string) => NAMED[agreement](name) ?? plain(name);
  return named(a) === named(b);
}

function classFault(agreement: Agreement, a: string, b: string): MateFault {
  const says = `${a} does not go with ${b}`;
  const cure = CURES[agreement]?.(a, b);
  return cure === undefined ? { of: 'class', says } : { of: 'class', says, cure };
}

const CURES: Partial<Record<Agreement, (a: string, b: string) => string | undefined>> = {
  thread: (a, b) => {
    const [one, other] = [thread(a), thread(b)];
    return one === undefined || other === undefined ? undefined : `A bush or a double screw, ${one.name} to ${other.name}`;
  },
  rod: (a, b) => `A sleeve or a clamp that takes both, ${a} and ${b}`,
  words: (a, b) => (/\d/.test(a) && /\d/.test(b) ? `A ring from ${a} to ${b}` : undefined),
};

/**
 * A rod in its clamp, a ring on a front: lengthwise is out of the point. On all others the point lies in the face, and lengthwise is along its `up`;
 * a collar's point too looks out of the barrel's side, with its `up` along the barrel.
 */
const AXIAL: ReadonlySet<Kind> = new Set(['rod', 'rod clamp', 'front']);

/** The axis of a point's frame (0 across, 1 up, 2 out) along which a setting moves. */
export function axisOf(kind: Kind, key: 'slideMm' | 'sideMm' | 'heightMm'): 0 | 1 | 2 {
  if (key === 'sideMm') return 0;
  return AXIAL.has(kind) === (key === 'slideMm') ? 2 : 1;
}

/** Joints that hold a piece by themselves come before those that only guide or touch it, when it is worked out what hangs on what. */
const RANKS: readonly (readonly Kind[])[] = [
  ['lens mount', 'front'], ['thread', 'hole', 'stud', 'wedge', 'tripod plate', 'quick release', 'battery plate', 'spud', 'arm'], ['collar', 'shoe'], ['rod', 'rod clamp'], ['hand', 'gear'], ['surface'],
];

export const holdRank = (kind: Kind): number => RANKS.findIndex((kinds) => kinds.includes(kind));
/** Kinds of point that a screw goes into or through. */
export const SCREWED: ReadonlySet<Kind> = new Set<Kind>(['thread', 'hole', 'stud', 'tripod plate']);
/** A support or stop that only pushes: it closes a gap, and holds nothing else. */
export const onlyPushes = (a: Point, b: Point): boolean => a.kind === 'surface' || b.kind === 'surface';
