import stringify from 'json-stringify-pretty-compact';
import type * as z from 'zod';
import { shoot as shootSchema } from './schema/shoot.ts';
import type { Shoot } from './schema/shoot.ts';

/**
 * A shoot as the text of its file: keys in the schema's order whatever order they were made in, keyed maps in their own order,
 * unknown keys last, short objects on one line. The same shoot always gives the same text.
 */
export function writeShoot(shoot: Shoot): string {
  return `${stringify(ordered(shoot, shootSchema), { maxLength: 160, indent: 2 })}\n`;
}

interface Definition {
  readonly type: string;
  readonly innerType?: z.ZodType;
  readonly shape?: Record<string, z.ZodType>;
  readonly valueType?: z.ZodType;
  readonly element?: z.ZodType;
  readonly options?: readonly z.ZodType[];
}

function ordered(value: unknown, schema: z.ZodType | undefined): unknown {
  const def = schema?.def as unknown as Definition | undefined;
  if (def?.innerType !== undefined) return ordered(value, def.innerType);
  if (Array.isArray(value)) return value.map((one) => ordered(one, def?.element));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value);
  if (def?.valueType !== undefined) return Object.fromEntries(entries.map(([key, one]) => [key, ordered(one, def.valueType)]));
  const shape = def?.shape ?? shapeAmong(def?.options ?? [], Object.keys(value));
  if (shape === undefined) return value;
  const order = Object.keys(shape);
  const rank = (key: string) => (order.includes(key) ? order.indexOf(key) : order.length);
  return Object.fromEntries(entries.toSorted(([a], [b]) => rank(a) - rank(b)).map(([key, one]) => [key, ordered(one, shape[key])]));
}

/** Of a union's objects, the one that knows most of the keys. */
function shapeAmong(options: readonly z.ZodType[], keys: readonly string[]): Record<string, z.ZodType> | undefined {
  const shapes = options.map((option) => (option.def as unknown as Definition).shape).filter((shape) => shape !== undefined);
  const known = (shape: Record<string, z.ZodType>) => keys.filter((key) => key in shape).length;
  return shapes.toSorted((a, b) => known(b) - known(a))[0];
}
