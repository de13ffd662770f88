import * as z from 'zod';
import { kitFile, shoot } from './schema/shoot.ts';

/** The file formats as JSON Schema (draft 2020-12), derived from what the program itself reads with. Unknown keys are kept by the program, so they are not forbidden here. */
export function jsonSchemaOf(format: 'shoot' | 'kit'): object {
  const schema = z.toJSONSchema(format === 'shoot' ? shoot : kitFile, { target: 'draft-2020-12', unrepresentable: 'any', io: 'input' });
  return { ...(forReaders(schema) as object), title: `Setworthy ${format} file` };
}

/** What a key means goes under `description`, its short name for people under `title` where there are both. */
function forReaders(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(forReaders);
  if (typeof value !== 'object' || value === null) return value;
  const { explains, ...rest } = value as Record<string, unknown>;
  const entries = Object.entries(rest).filter(([key, one]) => !(key === 'additionalProperties' && one === false)).map(([key, one]) => [key, forReaders(one)] as const);
  if (typeof explains !== 'string') return Object.fromEntries(explains === undefined ? entries : [...entries, ['explains', forReaders(explains)]]);
  const named = Object.fromEntries(entries);
  return { ...named, ...(named['description'] === undefined ? {} : { title: named['description'] }), description: explains };
}
