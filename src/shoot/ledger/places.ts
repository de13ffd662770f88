/** Where something stands, or would stand, in a shoot. */
export interface Place {
  readonly path: string;
  /** The last name of its path. */
  readonly key: string;
}

/** A place with what stands there, as the ledger keeps it. */
export class Entry implements Place {
  readonly above: Entry | undefined;
  readonly key: string;
  value: unknown;
  /** What stands below it, as far as somebody looked there. */
  below: Map<string, Entry> | undefined = undefined;
  /** The run that read this last: reading the same twice over is noted once. */
  lastRun = 0;
  /** The update that changed this last. */
  lastChange = 0;
  private written: string | undefined = undefined;

  constructor(above: Entry | undefined, key: string, value: unknown) {
    this.above = above;
    this.key = key;
    this.value = value;
  }

  /** Written when somebody first asks: most places are only looked at. */
  get path(): string {
    return (this.written ??= this.above?.above === undefined ? this.key : `${this.above.path}/${this.key}`);
  }

  /** The place under a key. */
  under(key: string): Entry {
    const known = this.below?.get(key);
    if (known !== undefined) return known;
    const entry = new Entry(this, key, valueBelow(this.value, key));
    (this.below ??= new Map()).set(key, entry);
    return entry;
  }
}

/** Takes a new value at a place and, where it differs, all the way down. */
export function change(entry: Entry, value: unknown, at: number): void {
  if (value === entry.value) return;
  entry.value = value;
  entry.lastChange = at;
  if (entry.below !== undefined) for (const one of entry.below.values()) change(one, valueBelow(value, one.key), at);
}

/** The value under a key; under `*` the keys there as one text, empty where nothing is; under `?` whether anything is there. */
export function valueBelow(value: unknown, key: string): unknown {
  if (key === '?') return value !== undefined;
  const holder = typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : undefined;
  if (key === '*') return holder === undefined ? '' : Object.keys(holder).join(' ');
  return holder !== undefined && Object.hasOwn(holder, key) ? holder[key] : undefined;
}
