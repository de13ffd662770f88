import { nearestName } from '../faults/nearestName.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { Refusal } from './Refusal.ts';

type Named = Readonly<Record<string, { readonly name?: string | undefined }>>;

/**
 * The id that a user meant by an id or a name; a refusal with the nearest one where there is none. Where nothing was said and
 * there is only one, it is that one.
 */
export function chosen(among: Named, wanted: string | undefined, kind: string): string {
  if (wanted === undefined) return theOnly(among, kind);
  if (Object.hasOwn(among, wanted)) return wanted;
  const byName = Object.entries(among).find(([, { name }]) => name?.toLowerCase() === wanted.toLowerCase());
  if (byName !== undefined) return byName[0];
  const one = nearestName(wanted, Object.keys(among));
  const near = one === undefined ? holding(among, wanted) : [one];
  throw new Refusal('', [{ path: '', message: `There is no ${kind} "${wanted}".`, cure: near.length === 0 ? known(among) : `Did you mean ${near.map((id) => `"${id}"`).join(' or ')}?` }]);
}

/** The setup that was named, else every one; a refusal where there is none to work on. */
export function chosenSetups({ setups }: Shoot, wanted: string | undefined, file: string): string[] {
  if (wanted !== undefined) return [chosen(setups, wanted, 'setup')];
  if (Object.keys(setups).length === 0) throw new Refusal(file, [{ path: 'setups', message: 'This shoot has no setup yet, so that nothing is connected.', cure: 'Enter a setup: camera build, glasses, mode.' }]);
  return Object.keys(setups);
}

function theOnly(among: Named, kind: string): string {
  const [first, ...others] = Object.keys(among);
  if (first !== undefined && others.length === 0) return first;
  const said = first === undefined ? `There is no ${kind} here yet.` : `Say which ${kind}: there are ${others.length + 1}.`;
  throw new Refusal('', [{ path: '', message: said, ...(first === undefined ? {} : { cure: known(among) }) }]);
}

/** Those whose id, else whose name, holds what was typed: a few to choose from, or none. */
function holding(among: Named, wanted: string): string[] {
  const low = wanted.toLowerCase();
  const ids = Object.keys(among).filter((id) => id.toLowerCase().includes(low));
  const found = ids.length > 0 ? ids : Object.keys(among).filter((id) => among[id]?.name?.toLowerCase().includes(low) === true);
  return low === '' || found.length > MOST_OFFERED ? [] : found;
}

const MOST_OFFERED = 6;
const MOST_KNOWN = 30;

function known(among: Named): string {
  const ids = Object.keys(among);
  const more = ids.length > MOST_KNOWN ? ` and ${ids.length - MOST_KNOWN} more` : '';
  return `Known: ${ids.length === 0 ? 'none' : ids.slice(0, MOST_KNOWN).join(', ')}${more}.`;
}
