import { closeSync, fsyncSync, openSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, basename } from 'node:path';
import { randomBytes } from 'node:crypto';
import type { Fault } from '../faults/Fault.ts';
import { readShoot } from '../shoot/read.ts';
import { MOST_CHARACTERS } from '../shoot/readJson.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { faultText } from '../faults/Fault.ts';
import { Refusal, valueOrRefuse } from './Refusal.ts';
import type { World } from './World.ts';

/** The text of a file, or a refusal that says why there is none. */
export function readText(path: string): string {
  try {
    const { size } = statSync(path);
    if (size > MOST_CHARACTERS) throw new Refusal(path, [{ path: '', message: `The file is ${Math.round(size / 1e6)} MB; at most 33 MB are read.`, cure: 'Is it a shoot file?' }]);
    return readFileSync(path, 'utf8');
  } catch (thrown) {
    if (thrown instanceof Refusal) throw thrown;
    throw new Refusal(path, [systemFault(thrown)]);
  }
}

/** Reads a shoot file; unknown keys are reported on the error stream and kept. */
export function loadShoot(world: World, path: string): Shoot {
  const outcome = readShoot(readText(path));
  const shoot = valueOrRefuse(outcome, path);
  if (outcome.ok) for (const warning of outcome.warnings) world.err(`${path}: ${faultText(warning)} It is kept as it is.\n`);
  return shoot;
}

/** Writes a file whole or not at all: a new file beside it, flushed, then put in its place. */
export function writeWhole(path: string, content: string | Uint8Array): void {
  const beside = join(dirname(path), `.${basename(path)}.${randomBytes(4).toString('hex')}.part`);
  try {
    const file = openSync(beside, 'wx');
    try {
      writeFileSync(file, content);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, path);
    flushFolder(dirname(path));
  } catch (thrown) {
    rmSync(beside, { force: true });
    throw new Refusal(path, [systemFault(thrown)]);
  }
}

/** Some systems cannot open a folder; then the rename is as safe as they make it. */
function flushFolder(path: string): void {
  let folder: number | undefined;
  try {
    folder = openSync(path, 'r');
    fsyncSync(folder);
  } catch {
    // Nothing to flush here.
  } finally {
    if (folder !== undefined) closeSync(folder);
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'There is no such file or folder.', EISDIR: 'This is a folder, not a file.', EACCES: 'This may not be read or written by you.', EPERM: 'This may not be changed by you.',
  ENOSPC: 'The disk is full.', EROFS: 'This disk can only be read.', ENOTDIR: 'A part of the path is not a folder.', ENAMETOOLONG: 'The name is too long.', EEXIST: 'There is a file of this name already.',
};

export function systemFault(thrown: unknown): Fault {
  const code = (thrown as NodeJS.ErrnoException).code ?? '';
  return { path: '', message: REASONS[code] ?? `It could not be opened (${code === '' ? String(thrown) : code}).` };
}
