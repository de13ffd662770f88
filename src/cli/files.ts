import { type Stats, chmodSync, closeSync, existsSync, fsyncSync, mkdirSync, openSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { randomBytes } from 'node:crypto';
import type { Fault } from '../faults/Fault.ts';
import { readShoot } from '../shoot/read.ts';
import { MOST_CHARACTERS } from '../shoot/readJson.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { toldOnce } from '../faults/toldOnce.ts';
import { readBytes } from './readBytes.ts';
import { Refusal, valueOrRefuse } from './Refusal.ts';
import type { World } from './World.ts';

/** The text of a file, or a refusal that says why there is none. */
export function readText(path: string): string {
  return textOf(readWhole(path), path);
}

/** Bytes as text, or a refusal that says where they are none. */
export function textOf(bytes: Buffer, path: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal(path, [notText(bytes)]);
  }
}

/** The bytes of a file, or a refusal that says why there are none. */
export function readWhole(path: string): Buffer {
  mustBeNamed(path);
  const read = refusingSystem(path, () => readBytes(path, MOST_CHARACTERS));
  if ('bytes' in read) return read.bytes;
  if ('silent' in read) throw new Refusal(path, [{ path: '', message: 'This is a pipe, and nothing comes through it.', cure: 'Is the program that writes to it running?' }]);
  throw new Refusal(path, [{ path: '', message: `This is ${Math.round(read.tooLarge / 1e6)} MB or more; at most 33 MB are read.`, cure: 'Is it the right file?' }]);
}

/** An empty name is what an unset variable of a shell leaves. */
export function mustBeNamed(path: string): void {
  if (path.trim() === '') throw new Refusal('', [{ path: '', message: 'The name of the file is empty.', cure: 'Name a file, such as day.shoot.json.' }]);
}

function notText(bytes: Buffer): Fault {
  if (bytes.subarray(0, 1000).includes(0)) return { path: '', message: 'This is not a text file in UTF-8.', cure: 'If a program wrote it as UTF-16, save it as UTF-8.' };
  const before = Buffer.from(bytes.toString('utf8').split('\uFFFD', 1)[0] ?? '').toString();
  return { path: '', line: before.split('\n').length, column: before.length - before.lastIndexOf('\n'), message: 'A letter here is not written in UTF-8.', cure: 'Save the file again with UTF-8 as its encoding.' };
}

function refusingSystem<T>(path: string, work: () => T): T {
  try {
    return work();
  } catch (thrown) {
    throw new Refusal(path, [systemFault(thrown)]);
  }
}

/** Reads a shoot file; unknown keys are reported on the error stream and kept. */
export function loadShoot(world: World, path: string): Shoot {
  const outcome = readShoot(readText(path));
  const shoot = valueOrRefuse(outcome, path);
  if (outcome.ok) for (const warning of toldOnce(outcome.warnings)) world.err(`${path}: ${warning} It is kept as it is.\n`);
  return shoot;
}

/** Writes a file whole or not at all: a new file beside it, flushed, then put in its place. A link is followed, rights are kept. */
export function writeWhole(path: string, content: string | Uint8Array): void {
  mustBeNamed(path);
  const before = refusingSystem(path, () => statSync(path, { throwIfNoEntry: false }));
  if (before !== undefined && !before.isFile()) throw new Refusal(path, [before.isDirectory() ? systemFault({ code: 'EISDIR' }) : { path: '', message: 'This is a device or a pipe; only a file can be written.' }]);
  const target = before === undefined ? path : refusingSystem(path, () => realpathSync(path));
  const beside = join(dirname(target), `.${basename(target)}.${randomBytes(4).toString('hex')}.part`);
  try {
    writeNew(beside, content, before);
    renameSync(beside, target);
    flushFolder(dirname(target));
  } catch (thrown) {
    rmSync(beside, { force: true });
    throw new Refusal(path, [systemFault(thrown)]);
  }
}

function writeNew(path: string, content: string | Uint8Array, like: Stats | undefined): void {
  const file = openSync(path, 'wx');
  try {
    writeFileSync(file, content);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  if (like !== undefined) chmodSync(path, like.mode);
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

/** Makes a folder and those above it that are not there; tells which were made, the uppermost first. One at a time: asked for all at once, the engine never ends where none can be made. */
export function makeFolders(folder: string): string[] {
  const wanted: string[] = [];
  for (let at = resolve(folder); !existsSync(at); at = dirname(at)) wanted.unshift(at);
  for (const one of wanted) mkdirSync(one);
  return wanted;
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'There is no such file or folder.', EISDIR: 'This is a folder, not a file.', EACCES: 'This may not be read or written by you.', EPERM: 'This may not be changed by you.',
  ENOSPC: 'The disk is full.', EROFS: 'This disk can only be read.', ENOTDIR: 'A part of the path is not a folder.', ENAMETOOLONG: 'The name is too long.', EEXIST: 'There is a file of this name already.',
  ELOOP: 'Links lead round in a circle here.', EMFILE: 'Too many files are open.', ENXIO: 'Nothing can be read here.', EIO: 'The disk does not answer as it should.', EBUSY: 'Another program holds it.',
};

export function systemFault(thrown: unknown): Fault {
  const code = (thrown as NodeJS.ErrnoException).code ?? '';
  return { path: '', message: REASONS[code] ?? `It could not be opened (${code === '' ? String(thrown) : code}).` };
}
