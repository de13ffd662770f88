/** One place where two states of a shoot differ: what stands there now, or nothing where it is gone. */
export interface ChangedEntry {
  readonly keys: readonly string[];
  readonly value?: unknown;
  readonly gone?: true;
}

const DEEP_ENOUGH = 3;

/** The places in which `next` differs from `before`, by identity: edits share what they do not touch. */
export function changedEntries(before: unknown, next: unknown, keys: readonly string[] = []): ChangedEntry[] {
  if (before === next) return [];
  if (!isMap(before) || !isMap(next) || keys.length === DEEP_ENOUGH) return [next === undefined ? { keys, gone: true } : { keys, value: next }];
  const all = new Set([...Object.keys(before), ...Object.keys(next)]);
  return [...all].flatMap((key) => changedEntries(before[key], next[key], [...keys, key]));
}

/** The state after the changes; what they do not touch stays the same object. */
export function withEntries<T>(state: T, changes: readonly ChangedEntry[]): T {
  return changes.reduce<unknown>((value, { keys, gone, value: entry }) => withEntry(value, keys, gone === true ? undefined : entry), state) as T;
}

function withEntry(state: unknown, [key, ...rest]: readonly string[], entry: unknown): unknown {
  if (key === undefined) return entry;
  const holder = isMap(state) ? state : {};
  const next = withEntry(holder[key], rest, entry);
  if (next !== undefined) return { ...holder, [key]: next };
  const { [key]: _gone, ...others } = holder;
  return others;
}

function isMap(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
