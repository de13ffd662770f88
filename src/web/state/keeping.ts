import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

export interface KeptShoot {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly savedAt: number;
}

interface Shelf extends DBSchema {
  shoots: { key: string; value: KeptShoot };
}

let opened: Promise<IDBPDatabase<Shelf>> | undefined;

function shelf(): Promise<IDBPDatabase<Shelf>> {
  opened ??= openDB<Shelf>('setworthy', 1, { upgrade: (db) => void db.createObjectStore('shoots', { keyPath: 'id' }) });
  return opened;
}

/** Keeps a shoot in the browser, flushed to disk before it says so. */
export async function keep(shoot: KeptShoot): Promise<void> {
  const transaction = (await shelf()).transaction('shoots', 'readwrite', { durability: 'strict' });
  await Promise.all([transaction.store.put(shoot), transaction.done]);
}

export async function keptShoot(id: string): Promise<KeptShoot | undefined> {
  return (await shelf()).get('shoots', id);
}

/** All shoots kept, the last one first. */
export async function keptShoots(): Promise<KeptShoot[]> {
  return (await (await shelf()).getAll('shoots')).toSorted((a, b) => b.savedAt - a.savedAt);
}

export async function dropKept(id: string): Promise<void> {
  await (await shelf()).delete('shoots', id);
}
