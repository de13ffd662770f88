/** Where something stands, or would stand, in a shoot. */
export interface Place {
  readonly path: string;
}

/** A place with what stands there, as the ledger keeps it. */
export interface Entry extends Place {
  /** The last name of its path. */
  readonly key: string;
  value: unknown;
  /** What stands below it, as far as somebody looked there. */
  below: Entry[] | undefined;
  /** The run that read this last: reading the same twice over is noted once. */
  lastRun: number;
  /** The update that changed this last. */
  lastChange: number;
}

/** Takes a new value at a place and, where it differs, all the way down. */
export function change(entry: Entry, value: unknown, at: number): void {
  if (value === entry.value) return;
  entry.value = value;
  entry.lastChange = at;
  for (const one of entry.below ?? []) change(one, valueBelow(value, one.key), at);
}

/** The value under a key; under `*` the keys there as one text, empty where nothing is; under `?` whether anything is there. */
export function valueBelow(value: unknown, key: string): unknown {
  if (key === '?') return value !== undefined;
  const holder = typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : undefined;
  if (key === '*') return holder === undefined ? '' : Object.keys(holder).join(' ');
  return holder !== undefined && Object.hasOwn(holder, key) ? holder[key] : undefined;
}
