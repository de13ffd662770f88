import type { Patch } from '../shoot/edit/Edit.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';

/** Path segments; a copy's own figures are keyed by paths and stay in one piece. */
export function keysOfPath(path: string): string[] {
  const copyFigure = /^(kit)\/(copies)\/([^/]+)\/(figures)\/(.+)$/.exec(path);
  return copyFigure === null ? path.split('/') : copyFigure.slice(1);
}

/** What stands at a path, `undefined` where nothing does. */
export function valueAt(shoot: unknown, path: string): unknown {
  return keysOfPath(path).reduce<unknown>((value, key) => (typeof value === 'object' && value !== null && Object.hasOwn(value, key) ? (value as Record<string, unknown>)[key] : undefined), shoot);
}

/** The patches that enter a value at a path, making what leads there where it is missing; `undefined` takes it away. */
export function entering(shoot: Shoot, path: string, value: unknown): Patch[] {
  const keys = keysOfPath(path);
  const there = valueAt(shoot, path) !== undefined;
  if (value === undefined) return there ? [{ op: 'remove', path }] : [];
  if (there) return [{ op: 'replace', path, value }];
  const deepest = keys.findIndex((_, index) => valueAt(shoot, pathOf(keys.slice(0, index + 1))) === undefined);
  const nested = keys.slice(deepest + 1).reduceRight<unknown>((inner, key) => ({ [key]: inner }), value);
  return [{ op: 'add', path: pathOf(keys.slice(0, deepest + 1)), value: nested }];
}

const pathOf = (keys: readonly string[]): string => keys.join('/');
