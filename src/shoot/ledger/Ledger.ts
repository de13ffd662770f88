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
  /** The running computation by number, 0 where none runs; reads are told apart by it. */
  #run = 0;
  #runs = 0;
  /** Reads of the cells that are running, the innermost last; kept long, so that noting a read costs next to nothing. */
  readonly #log: Entry[] = [];
  #logged = 0;

  constructor(shoot: Shoot) {
    this.#shoot = shoot;
  }

  get shoot(): Shoot {
    return this.#shoot;
  }

  /** The value at a path of names joined by `/`, noted as read; `undefined` where nothing is entered. */
  at(path: string): unknown {
    const entry = this.#entries.get(path) ?? this.#enter(path);
    if (entry.lastRun !== this.#run && this.#run !== 0) {
      entry.lastRun = this.#run;
      this.#log[this.#logged] = entry;
      this.#logged += 1;
    }
    return entry.value;
  }

  /** The keys of the keyed map at a path. A change inside an entry does not make this stale; a new or lost key does. */
  keys(path: string): readonly string[] {
    const joined = this.at(`${path}/*`) as string;
    return joined === '' ? [] : joined.split(' ');
  }

  /** Whether anything is entered at a path. A change inside what is there does not make this stale. */
  has(path: string): boolean {
    return this.at(`${path}/?`) as boolean;
  }

  /** The result of a computation, kept under its key until something it read changes. What it throws is kept as well. */
  cell<T>(key: string, compute: () => T): T {
    const cell = this.#cells.get(key) ?? this.#newCell(key);
    const user = this.#open;
    if (user !== undefined) {
      (cell.users ??= new Set()).add(user);
      (user.uses ??= new Set()).add(cell);
    }
    if (cell.state === 'running') throw new Error(`The computation ${key} asks for its own result.`);
    if (cell.state === 'stale') this.#compute(cell, compute);
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
      cell.uses?.forEach(collect);
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
      cell.users?.forEach(spoil);
    };
    const changed = new Set<Entry>();
    for (const entry of this.#entries.values()) {
      const value = valueAt(next, entry.path);
      if (value === entry.value) continue;
      entry.value = value;
      changed.add(entry);
    }
    // Going through every cell's reads is quicker than keeping, at every read, who reads what.
    if (changed.size > 0) for (const cell of this.#cells.values()) if (cell.state !== 'stale' && cell.reads.some((entry) => changed.has(entry))) spoil(cell);
    return stale;
  }

  #enter(path: string): Entry {
    const entry: Entry = { path, value: valueAt(this.#shoot, path), lastRun: 0 };
    this.#entries.set(path, entry);
    return entry;
  }

  #newCell(key: string): Cell {
    const cell: Cell = { key, state: 'stale', value: undefined, reads: [], uses: undefined, users: undefined };
    this.#cells.set(key, cell);
    return cell;
  }

  #compute(cell: Cell, compute: () => unknown): void {
    cell.uses?.forEach((used) => used.users?.delete(cell));
    cell.uses?.clear();
    const outer = { open: this.#open, run: this.#run };
    const start = this.#logged;
    this.#runs += 1;
    [this.#open, this.#run] = [cell, this.#runs];
    cell.state = 'running';
    try {
      cell.value = compute();
      cell.state = 'done';
    } catch (thrown) {
      cell.value = thrown;
      cell.state = 'threw';
    } finally {
      [this.#open, this.#run] = [outer.open, outer.run];
      cell.reads = this.#log.slice(start, this.#logged);
      this.#logged = start;
    }
  }
}

interface Entry {
  readonly path: string;
  value: unknown;
  /** The run that read this last: reading the same twice over is noted once. */
  lastRun: number;
}

interface Cell {
  readonly key: string;
  state: 'stale' | 'running' | 'done' | 'threw';
  value: unknown;
  reads: readonly Entry[];
  uses: Set<Cell> | undefined;
  users: Set<Cell> | undefined;
}

/** The value at a path; at `…/*` the keys there as one text, empty where nothing is; at `…/?` whether anything is there. */
function valueAt(root: unknown, path: string): unknown {
  const wanted = path.endsWith('/*') ? 'keys' : path.endsWith('/?') ? 'presence' : 'value';
  let value = root;
  for (const key of (wanted === 'value' ? path : path.slice(0, -2)).split('/')) {
    value = typeof value === 'object' && value !== null && Object.hasOwn(value, key) ? (value as Record<string, unknown>)[key] : undefined;
  }
  if (wanted === 'value') return value;
  if (wanted === 'presence') return value !== undefined;
  return typeof value === 'object' && value !== null ? Object.keys(value).join(' ') : '';
}
