import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type Fault, faultText } from '../../faults/Fault.ts';
import { readShoot } from '../../shoot/read.ts';
import { readText, writeWhole } from '../files.ts';

const VERSIONS_KEPT = 12;
const BETWEEN_VERSIONS_MS = 5 * 60_000;

export type Saved = { readonly saved: true; readonly version: string } | { readonly saved: false; readonly why: 'changed outside' | 'not a shoot'; readonly says: string };

/** The one file the page may read and write. What is written is a sound shoot or nothing; earlier versions are kept beside it. */
export class ServedShoot {
  readonly path: string;
  readonly #now: () => Date;
  #lastKept = Number.NEGATIVE_INFINITY;

  constructor(path: string, now: () => Date) {
    this.path = path;
    this.#now = now;
  }

  get name(): string {
    return basename(this.path);
  }

  read(): { readonly text: string; readonly version: string } {
    const text = readText(this.path);
    return { text, version: versionOf(text) };
  }

  /** Writes the file where it still is the version the writer knew. */
  write(text: string, known: string): Saved {
    const there = this.read();
    if (there.version !== known) return { saved: false, why: 'changed outside', says: `${this.name} was changed by another program; nothing was written.` };
    const read = readShoot(text);
    if (!read.ok) return { saved: false, why: 'not a shoot', says: `Nothing was written. ${read.faults.slice(0, 3).map((fault: Fault) => faultText(fault)).join(' ')}` };
    if (there.text !== text) {
      this.#keepVersion(there.text);
      writeWhole(this.path, text);
    }
    return { saved: true, version: versionOf(text) };
  }

  /** Keeps what stood there, at most one every few minutes, the last dozen. */
  #keepVersion(text: string): void {
    const now = this.#now();
    if (now.getTime() - this.#lastKept < BETWEEN_VERSIONS_MS) return;
    this.#lastKept = now.getTime();
    const folder = join(dirname(this.path), `${this.name.replace(/(\.shoot)?\.json$/, '')}.versions`);
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, `${now.toISOString().replaceAll(':', '-').slice(0, 19)}.shoot.json`), text);
    const kept = readdirSync(folder).filter((name) => /^\d{4}-.*\.shoot\.json$/.test(name)).sort();
    for (const old of kept.slice(0, -VERSIONS_KEPT)) rmSync(join(folder, old), { force: true });
  }
}

const versionOf = (text: string): string => `"${createHash('sha256').update(text).digest('base64url').slice(0, 22)}"`;
