import type { Part } from '../schema/part.ts';
import type { Edit } from './Edit.ts';

/** Takes new parts into the kit. */
export function addParts(parts: Readonly<Record<string, Part>>, says: string): Edit {
  return { says, patches: Object.entries(parts).map(([id, value]) => ({ op: 'add', path: `kit/parts/${id}`, value })) };
}
