import { applyPatches, enablePatches, produceWithPatches } from 'immer';
import type { Fault, Outcome } from '../../faults/Fault.ts';
import { checkShoot } from '../read.ts';
import type { Shoot } from '../schema/shoot.ts';

enablePatches();

/** One change at a path, as data: it crosses to a worker, is kept for undo, and stands in a remedy. */
export interface Patch {
  readonly op: 'add' | 'replace' | 'remove';
  /** Names from the top of the file, joined by `/`. */
  readonly path: string;
  readonly value?: unknown;
}

/** A named change to a shoot. The one way a shoot is changed. */
export interface Edit {
  /** What it does, in words: "40-tooth gear on the far motor". */
  readonly says: string;
  readonly patches: readonly Patch[];
}

export interface Edited {
  readonly shoot: Shoot;
  /** The edit that takes it back. */
  readonly inverse: Edit;
}

/** The shoot after an edit and the edit that undoes it; or the faults the edit would bring in, and nothing changed. */
export function applyEdit(shoot: Shoot, edit: Edit): Outcome<Edited> {
  const unreachable = edit.patches.flatMap((patch) => unreachablePlace(shoot, patch, edit.patches));
  if (unreachable.length > 0) return { ok: false, faults: unreachable };
  const [next, , inverse] = produceWithPatches(shoot, (draft) => {
    applyPatches(draft, edit.patches.map(({ op, path, value }) => ({ op, path: keysOf(path), value: value as never })));
  });
  const checked = checkShoot(next);
  if (!checked.ok) return checked;
  const back = inverse.map(({ op, path, value }) => ({ op, path: path.join('/'), ...(op === 'remove' ? {} : { value: value as unknown }) }));
  return { ok: true, value: { shoot: next, inverse: { says: edit.says, patches: back } }, warnings: checked.warnings };
}

/** Path segments; a list's index is a number. A copy's own figures are keyed by paths and stay in one piece. */
function keysOf(path: string): (string | number)[] {
  const copyFigure = /^(kit)\/(copies)\/([^/]+)\/(figures)\/(.+)$/.exec(path);
  const keys = copyFigure === null ? path.split('/') : copyFigure.slice(1);
  return keys.map((key) => (/^\d+$/.test(key) ? Number(key) : key));
}

/** A patch must land in something that is there, or that an earlier patch of the same edit makes. */
function unreachablePlace(shoot: Shoot, patch: Patch, all: readonly Patch[]): Fault[] {
  const keys = keysOf(patch.path);
  const parent = keys.slice(0, -1).join('/');
  const made = all.some((other) => other !== patch && other.op !== 'remove' && (parent === other.path || parent.startsWith(`${other.path}/`)));
  if (made) return [];
  const holder = keys.slice(0, -1).reduce<unknown>((value, key) => (typeof value === 'object' && value !== null && Object.hasOwn(value, key) ? (value as never)[key] : undefined), shoot);
  const last = keys.at(-1) ?? '';
  const there = typeof holder === 'object' && holder !== null && last !== '__proto__' && (patch.op === 'add' || Object.hasOwn(holder, last));
  return there ? [] : [{ path: patch.path, message: 'There is nothing to change here.', cure: 'The shoot has changed since; look again.' }];
}
