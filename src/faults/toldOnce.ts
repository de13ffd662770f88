import { type Fault, faultText } from './Fault.ts';

/** So many places of one fault are named. */
const MOST_PLACES = 3;

/** Faults as lines of text; one that is found at many places under the same key is told once, with their count and the first of them. */
export function toldOnce(faults: readonly Fault[]): string[] {
  const alike = new Map<string, Fault[]>();
  for (const fault of faults) {
    const key = JSON.stringify([fault.message, fault.cure, fault.severity, fault.line === undefined ? keyOf(fault.path) : fault.path]);
    alike.set(key, [...(alike.get(key) ?? []), fault]);
  }
  return [...alike.values()].map(told);
}

/** The last key that is no place in a list. */
const keyOf = (path: string): string => path.split('/').findLast((one) => !/^\d+$/.test(one)) ?? '';

function told(group: readonly Fault[]): string {
  const [first] = group as readonly [Fault];
  if (group.length === 1) return faultText(first);
  const { message, cure } = first;
  const named = group.slice(0, MOST_PLACES).map(({ path }) => path);
  const more = group.length - named.length;
  const listed = more > 0 ? `${named.join(', ')} and ${more} more` : `${named.slice(0, -1).join(', ')} and ${named.at(-1) ?? ''}`;
  return `${message}${cure === undefined ? '' : ` ${cure}`} At ${group.length} places: ${listed}.`;
}
