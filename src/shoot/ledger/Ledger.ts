import type { Shoot } from '../schema/shoot.ts';

/**
 * The tracked read. Everything computed from a shoot is a *cell*: it runs a function that reads the shoot through `at` and
 * other cells through `cell`, and the ledger notes what was read. From that log come, for free, what an answer rests on, and
 * which cells an edit makes stale: exactly those whose reads changed.
 *
 * Values are compared by identity; edits share what they do not touch, so an untouched subtree stays the same object.
 */
export class Ledger {
  #shoot: Shoot;
  readonly #entries = new Map<string, Entry>();
  readonly #cells = new Map<string, Cell>();
  #open: Cell | undefined;

  constructor(shoot: Shoot) {
    this.#shoot = shoot;
  }

  get shoot(): Shoot {
    return this.#shoot;
  }

  /** The value at a path of names joined by `/`, noted as read; `undefined` where nothing is entered. */
  at(path: string): unknown {
    const entry = this.#entries.get(path) ?? this.#enter(path);
    const open = this.#open;
    if (open !== undefined && entry.lastReader !== open) {
      entry.lastReader = open;
      entry.readers.add(open);
      open.reads.push(entry);
    }
    return entry.value;
  }

  /** The keys of the keyed map at a path. A change inside an entry does not make this stale; a new or lost key does. */
  keys(path: string): readonly string[] {
    const joined = this.at(`${path}/*`) as string;
    return joined === '' ? [] : joined.split(' ');
  }

  /** The result of a computation, kept under its key until something it read changes. What it throws is kept as well. */
  cell<T>(key: string, compute: () => T): T {
    const cell = this.#cells.get(key) ?? this.#newCell(key);
    const user = this.#open;
    if (user !== undefined) {
      cell.users.add(user);
      user.uses.add(cell);
    }
    if (cell.state === 'running') throw new Error(`The computation ${key} asks for its own result.`);
    if (cell.state === 'stale') this.#run(cell, compute);
    if (cell.state === 'threw') throw cell.value;
    return cell.value as T;
  }

  /** Whether a result is at hand and still true. */
  isFresh(key: string): boolean {
    const state = this.#cells.get(key)?.state;
    return state === 'done' || state === 'threw';
  }

  /** Every path a cell's result rests on, its own reads first, then those of the cells it used. */
  readsOf(key: string): string[] {
    const paths = new Set<string>();
    const seen = new Set<Cell>();
    const collect = (cell: Cell): void => {
      if (seen.has(cell)) return;
      seen.add(cell);
      for (const { path } of cell.reads) paths.add(path);
      cell.uses.forEach(collect);
    };
    const cell = this.#cells.get(key);
    if (cell !== undefined) collect(cell);
    return [...paths];
  }

  /** Takes the next state of the shoot; cells that read something which changed are stale from now on. Their keys are returned. */
  update(next: Shoot): string[] {
    this.#shoot = next;
    const stale: string[] = [];
    const spoil = (cell: Cell): void => {
      if (cell.state === 'stale') return;
      cell.state = 'stale';
      cell.value = undefined;
      stale.push(cell.key);
      cell.users.forEach(spoil);
    };
    for (const entry of this.#entries.values()) {
      const value = valueAt(next, entry.path);
      if (value === entry.value) continue;
      entry.value = value;
      entry.readers.forEach(spoil);
    }
    return stale;
  }

  #enter(path: string): Entry {
    const entry: Entry = { path, value: valueAt(this.#shoot, path), readers: new Set(), lastReader: undefined };
    this.#entries.set(path, entry);
    return entry;
  }

  #newCell(key: string): Cell {
    const cell: Cell = { key, state: 'stale', value: undefined, reads: [], uses: new Set(), users: new Set() };
    this.#cells.set(key, cell);
    return cell;
  }

  #run(cell: Cell, compute: () => unknown): void {
    for (const entry of cell.reads) {
      entry.readers.delete(cell);
      if (entry.lastReader === cell) entry.lastReader = undefined;
    }
    for (const used of cell.uses) used.users.delete(cell);
    cell.reads = [];
    cell.uses.clear();
    const outer = this.#open;
    this.#open = cell;
    cell.state = 'running';
    try {
      cell.value = compute();
      cell.state = 'done';
    } catch (thrown) {
      cell.value = thrown;
      cell.state = 'threw';
    } finally {
      this.#open = outer;
    }
  }
}

interface Entry {
  readonly path: string;
  value: unknown;
  readonly readers: Set<Cell>;
  /** The cell that read this last: saves most of the look-ups in `readers`. */
  lastReader: Cell | undefined;
}

interface Cell {
  readonly key: string;
  state: 'stale' | 'running' | 'done' | 'threw';
  value: unknown;
  reads: Entry[];
  readonly uses: Set<Cell>;
  readonly users: Set<Cell>;
}

/** The value at a path; at `…/*` the keys there as one text, which is empty where the map is absent. */
function valueAt(root: unknown, path: string): unknown {
  const forKeys = path.endsWith('/*');
  let value = root;
  for (const key of (forKeys ? path.slice(0, -2) : path).split('/')) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return forKeys ? '' : undefined;
    value = (value as Record<string, unknown>)[key];
  }
  if (!forKeys) return value;
  return typeof value === 'object' && value !== null ? Object.keys(value).join(' ') : '';
}
