import { nearestName } from '../faults/nearestName.ts';
import { Refusal } from './Refusal.ts';

/** The id that a user meant by an id or a name; a refusal with the nearest one where there is none. */
export function chosen(among: Readonly<Record<string, { readonly name?: string | undefined }>>, wanted: string, kind: string): string {
  if (Object.hasOwn(among, wanted)) return wanted;
  const byName = Object.entries(among).find(([, { name }]) => name?.toLowerCase() === wanted.toLowerCase());
  if (byName !== undefined) return byName[0];
  const near = nearestName(wanted, Object.keys(among));
  const known = Object.keys(among).slice(0, 12).join(', ');
  throw new Refusal('', [{ path: '', message: `There is no ${kind} "${wanted}".`, cure: near === undefined ? `Known: ${known === '' ? 'none' : known}.` : `Did you mean "${near}"?` }]);
}
