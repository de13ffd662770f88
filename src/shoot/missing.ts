import type { Fault } from '../faults/Fault.ts';
import { nearestName } from '../faults/nearestName.ts';

/** What may be named: maps by their keys, or a list of names. */
type Known = readonly (Readonly<Record<string, unknown>> | readonly string[])[];

/** A fault where a name is none of those known: with the nearest, or with what there is. */
export function missing(path: string, found: string, kind: string, ...known: Known): Fault[] {
  if (known.some((some) => (isList(some) ? some.includes(found) : Object.hasOwn(some, found)))) return [];
  const lists = known.map(namesIn);
  const near = nearestOf(found, lists);
  const cure = near === undefined ? listed(lists.flatMap((names) => names.slice(0, MOST_LISTED)), lists.reduce((sum, { length }) => sum + length, 0)) : `Did you mean "${near}"?`;
  return [{ path, message: `There is no ${kind} "${found}".`, cure }];
}

const MOST_LISTED = 8;
const isList = (some: Known[number]): some is readonly string[] => Array.isArray(some);

/** Names of a map, gathered once: a file may miss thousands of times. */
const gathered = new WeakMap<object, readonly string[]>();
function namesIn(some: Known[number]): readonly string[] {
  if (isList(some)) return some;
  const names = gathered.get(some) ?? Object.keys(some);
  gathered.set(some, names);
  return names;
}

function nearestOf(found: string, lists: readonly (readonly string[])[]): string | undefined {
  const best = lists.map((names) => nearestName(found, names)).filter((near) => near !== undefined);
  return nearestName(found, best);
}

function listed(first: readonly string[], count: number): string {
  if (count === 0) return 'There is none yet.';
  const shown = first.slice(0, MOST_LISTED);
  return `Known: ${shown.join(', ')}${count > shown.length ? ` and ${count - shown.length} more` : ''}.`;
}
