import { KINDS, type FacetName, facets } from '../schema/part.ts';
import { typicalParts } from '../typical/typicalParts.ts';

/** What the typical classes of a kind of part have, as groups of columns; `undefined` where it is no kind. A cage has none of its own. */
export function columnsOfKind(kind: string): readonly FacetName[] | undefined {
  if (!(KINDS as readonly string[]).includes(kind)) return undefined;
  const alike = Object.values(typicalParts).filter((part) => part.kind === kind);
  return (Object.keys(facets) as FacetName[]).filter((facet) => alike.some((part) => part[facet] !== undefined));
}
