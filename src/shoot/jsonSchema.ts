import * as z from 'zod';
import { kitFile, shoot } from './schema/shoot.ts';

/** The file formats as JSON Schema (draft 2020-12), derived from what the program itself reads with. Unknown keys are kept by the program, so they are not forbidden here. */
export function jsonSchemaOf(format: 'shoot' | 'kit'): object {
  const schema = z.toJSONSchema(format === 'shoot' ? shoot : kitFile, { target: 'draft-2020-12', unrepresentable: 'any', io: 'input' });
  return { ...(withoutClosing(schema) as object), title: `Setworthy ${format} file` };
}

function withoutClosing(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutClosing);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).filter(([key, one]) => !(key === 'additionalProperties' && one === false));
  return Object.fromEntries(entries.map(([key, one]) => [key, withoutClosing(one)]));
}
