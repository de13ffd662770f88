import type { Shoot } from '../schema/shoot.ts';
import { Entry, type Place, change } from './places.ts';

export type { Place } from './places.ts';

/**
 * The tracked read. Everything computed from a shoot is a *cell*: it runs a function that reads the shoot through `at` and
 * other cells through `cell`, and the ledger notes what was read. From that log come, for free, what an answer rests on, and
 * which cells an edit makes stale: exactly those whose reads changed.
 *
 * Values are compared by identity; edits share what they do not touch, so an untouched subtree stays the same object.
 */
export class Ledger {
  readonly #root: Entry;
  readonly #entries = new Map<string, Entry>();
  readonly #cells = new Map<string, Cell>();
  #open: Cell | undefined;
  /** The running computation by number, 0 where none runs; reads are told apart by it. */
  #run = 0;
  #runs = 0;
  #changes = 0;
  /** Reads of the cells that are running, the innermost last; kept long, so that noting a read costs next to nothing. */
  readonly #log: Entry[] = [];
  #logged = 0;

  constructor(shoot: Shoot) {
    this.#root = new Entry(undefined, '', shoot);
  }

  get shoot(): Shoot {
    return this.#root.value as Shoot;
  }

  /** The value at a path of names joined by `/`, noted as read; `undefined` where nothing is entered. */
  at(path: string): unknown {
    const entry = this.#entries.get(path);
    return this.see(entry === undefined ? this.#enter(path) : entry);
  }

  /** A place to look, which a path names: kept by who looks there over and over, as finding it by its path costs more than the look. */
  place(path: string): Place {
    return this.#entries.get(path) ?? this.#enter(path);
  }

  /** A place below another of this ledger, by the names from there on: quicker than by its whole path. */
  placeBelow(place: Place, names: readonly string[]): Place {
    return names.reduce((entry, name) => entry.under(name), place as Entry);
  }

  /** The value at a place of this ledger, noted as read like that at a path. */
  see(place: Place): unknown {
    const entry = place as Entry;
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
    if (user !== undefined && cell.lastRun !== this.#run) {
      cell.lastRun = this.#run;
      noteUse(cell, user);
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
    const stale: string[] = [];
    const spoil = (cell: Cell): void => {
      if (cell.state === 'stale') return;
      cell.state = 'stale';
      cell.value = undefined;
      stale.push(cell.key);
      const { users } = cell;
      cell.users = undefined;
      for (const use of users ?? []) if (isInForce(use)) spoil(use.user);
    };
    this.#changes += 1;
    change(this.#root, next, this.#changes);
    // Going through every cell's reads is quicker than keeping, at every read, who reads what.
    for (const cell of this.#cells.values()) if (cell.state !== 'stale' && isTouched(cell, this.#changes)) spoil(cell);
    return stale;
  }

  #enter(path: string): Entry {
    const cut = path.lastIndexOf('/');
    const above = cut === -1 ? this.#root : (this.place(path.slice(0, cut)) as Entry);
    const entry = above.under(path.slice(cut + 1));
    this.#entries.set(path, entry);
    return entry;
  }

  #newCell(key: string): Cell {
    const cell: Cell = { key, state: 'stale', value: undefined, reads: [], uses: undefined, users: undefined, ranAs: 0, lastRun: 0 };
    this.#cells.set(key, cell);
    return cell;
  }

  #compute(cell: Cell, compute: () => unknown): void {
    const [open, run, start] = [this.#open, this.#run, this.#logged];
    this.#runs += 1;
    this.#open = cell;
    this.#run = this.#runs;
    cell.uses = undefined;
    cell.ranAs = this.#run;
    cell.state = 'running';
    try {
      cell.value = compute();
      cell.state = 'done';
    } catch (thrown) {
      cell.value = thrown;
      cell.state = 'threw';
    } finally {
      this.#open = open;
      this.#run = run;
      cell.reads = this.#log.slice(start, this.#logged);
      this.#logged = start;
    }
  }
}

interface Cell {
  readonly key: string;
  state: 'stale' | 'running' | 'done' | 'threw';
  value: unknown;
  reads: readonly Entry[];
  /** The cells it used when it ran last. */
  uses: Cell[] | undefined;
  users: Use[] | undefined;
  /** The run that made its result. */
  ranAs: number;
  /** The run that used this last, as of an entry. */
  lastRun: number;
}

/** That a cell was used in a run of another; of no account any more once the other has run again. */
interface Use {
  readonly user: Cell;
  readonly run: number;
}

function isTouched({ reads }: Cell, change: number): boolean {
  for (let at = 0; at < reads.length; at += 1) if ((reads[at] as Entry).lastChange === change) return true;
  return false;
}

const isInForce = ({ user, run }: Use): boolean => user.ranAs === run;

function noteUse(cell: Cell, user: Cell): void {
  (user.uses ??= []).push(cell);
  const users = cell.users ?? [];
  // What users that ran again and again have left behind is swept out each time as many have gathered as a power of two.
  const isFull = users.length >= 64 && (users.length & (users.length - 1)) === 0;
  cell.users = isFull ? users.filter(isInForce) : users;
  cell.users.push({ user, run: user.ranAs });
}
