import type * as z from 'zod';
import type { Unit } from '../../units/Unit.ts';
import { unitOfKey } from '../../units/unitOfKey.ts';
import { part as partSchema } from '../schema/part.ts';

/** A column a kit table may have: a path in a part that ends in one word, number, list of numbers, or yes or no. */
export interface Column {
  readonly path: string;
  readonly holds: 'text' | 'number' | 'figure' | 'yes or no' | 'numbers';
  readonly says: string;
  readonly unit: string;
}

let known: ReadonlyMap<string, Column> | undefined;

/** Every column, by its path: derived from the schema of a part. Keyed maps (ports, points, modes) do not fit in a table. */
export function columnsOf(): ReadonlyMap<string, Column> {
  known ??= new Map([{ path: 'id', holds: 'text', says: 'key of the part in the file; made from the name where empty', unit: '' } as const, ...columnsIn(partSchema, '')].map((column) => [column.path, column]));
  return known;
}

interface Definition {
  readonly type: string;
  readonly innerType?: z.ZodType;
  readonly shape?: Record<string, z.ZodType>;
  readonly element?: z.ZodType;
  readonly options?: readonly z.ZodType[];
}

function columnsIn(schema: z.ZodType, path: string, outer = ''): Column[] {
  const def = schema.def as unknown as Definition;
  const says = outer === '' ? descriptionOf(schema) : outer;
  if (def.innerType !== undefined) return columnsIn(def.innerType, path, says);
  if (def.shape !== undefined) return Object.entries(def.shape).flatMap(([key, inner]) => columnsIn(inner, path === '' ? key : `${path}/${key}`));
  const holds = HOLDS[def.type] ?? (def.type === 'union' && def.options?.[0]?.def.type === 'number' ? 'figure' : undefined);
  const list = def.type === 'array' && def.element?.def.type === 'number' ? 'numbers' : undefined;
  const kind = holds ?? list;
  if (kind === undefined) return [];
  const unit = unitOfKey(path.slice(path.lastIndexOf('/') + 1));
  return [{ path, holds: kind, says, unit: PLAIN.has(unit) ? '' : unit }];
}

const PLAIN: ReadonlySet<Unit> = new Set(['ratio', 'count']);
const descriptionOf = (schema: z.ZodType): string => (schema.meta() as { description?: string } | undefined)?.description ?? '';

const HOLDS: Readonly<Record<string, Column['holds']>> = { string: 'text', enum: 'text', number: 'number', int: 'number', boolean: 'yes or no' };
