import type * as z from 'zod';
import type { Fault } from './Fault.ts';
import { nearestName } from './nearestName.ts';

/** The faults a schema found in a value, all of them, each with its own path and what would be right. */
export function schemaFaults(error: z.ZodError, root: unknown, schema: z.ZodType): Fault[] {
  return error.issues.flatMap((issue) => issueFaults(issue, { root, schema }, []));
}

type Issue = z.core.$ZodIssue;
interface Read {
  readonly root: unknown;
  readonly schema: z.ZodType;
}

function issueFaults(issue: Issue, read: Read, prefix: readonly PropertyKey[]): Fault[] {
  const keys = [...prefix, ...issue.path];
  const path = keys.map(String).join('/');
  const found = valueAt(read.root, keys);
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({
        path: path === '' ? key : `${path}/${key}`,
        message: `There is no key "${key}" here.`,
        ...cureFor(key, knownKeys(read.schema, keys)),
        severity: 'unknown key' as const,
      }));
    case 'invalid_type':
      return [
        found === undefined
          ? { path, message: `This is missing; it must be ${nounFor(issue.expected)}.` }
          : { path, message: `Found ${shown(found)}; it must be ${nounFor(issue.expected)}.` },
      ];
    case 'invalid_value':
      return [
        {
          path,
          message: `Found ${shown(found)}; allowed: ${issue.values.map(shown).join(', ')}.`,
          ...(typeof found === 'string' ? cureFor(found, issue.values.map(String)) : {}),
        },
      ];
    case 'too_small':
      return [{ path, message: `Found ${shown(found)}; it must be ${bound(issue, issue.minimum, 'more than', 'at least')}.` }];
    case 'too_big':
      return [{ path, message: `Found ${shown(found)}; it must be ${bound(issue, issue.maximum, 'less than', 'at most')}.` }];
    case 'invalid_union':
      return unionFaults(issue, read, keys);
    case 'invalid_key':
      return [{ path, message: `"${String(keys.at(-1))}" cannot be a name here: ${issue.issues[0]?.message ?? 'it is not allowed'}` }];
    default:
      return [{ path, message: issue.message }];
  }
}

/** Of a union's branches, the one that got furthest is the one that was meant. */
function unionFaults(issue: Issue & { code: 'invalid_union' }, read: Read, keys: readonly PropertyKey[]): Fault[] {
  const depth = (branch: readonly Issue[]) => Math.max(0, ...branch.map((one) => one.path.length));
  const wrongKind = (branch: readonly Issue[]) => branch.some((one) => one.path.length === 0 && one.code === 'invalid_type');
  const branches = issue.errors.filter((branch) => !wrongKind(branch));
  const meant = branches.toSorted((a, b) => depth(b) - depth(a) || a.length - b.length)[0];
  if (meant !== undefined) return meant.flatMap((one) => issueFaults(one, read, keys));
  const kinds = new Set(issue.errors.flat().map((one) => (one.code === 'invalid_type' ? nounFor(one.expected) : 'another value')));
  const found = valueAt(read.root, keys);
  const path = keys.map(String).join('/');
  return [{ path, message: `Found ${shown(found)}; it must be ${[...kinds].join(' or ')}.` }];
}

function bound(issue: { origin: string; inclusive?: boolean | undefined }, limit: number | bigint, beyond: string, upTo: string): string {
  const unit = issue.origin === 'string' ? ' characters long' : issue.origin === 'array' ? ' entries long' : '';
  return `${issue.inclusive === false ? beyond : upTo} ${limit}${unit}`;
}

function cureFor(found: string, known: Iterable<string>): { cure?: string } {
  const near = nearestName(found, known);
  return near === undefined ? {} : { cure: `Did you mean "${near}"?` };
}

/** The keys the schema has at a path, across the branches of unions. */
function knownKeys(schema: z.ZodType, keys: readonly PropertyKey[]): string[] {
  const def = schema.def as unknown as Partial<Record<string, unknown>> & { type: string };
  const inner = (def['innerType'] ?? def['in']) as z.ZodType | undefined;
  if (inner !== undefined) return knownKeys(inner, keys);
  if (def.type === 'union') return (def['options'] as z.ZodType[]).flatMap((option) => knownKeys(option, keys));
  const [key, ...rest] = keys;
  const shape = def['shape'] as Record<string, z.ZodType> | undefined;
  if (key === undefined) return Object.keys(shape ?? {});
  const next = shape?.[String(key)] ?? (def['valueType'] as z.ZodType | undefined) ?? (def['element'] as z.ZodType | undefined);
  return next === undefined ? [] : knownKeys(next, rest);
}

function nounFor(expected: string): string {
  const nouns: Record<string, string> = {
    number: 'a number', int: 'a whole number', string: 'text', boolean: 'true or false', object: 'an object', array: 'a list',
    record: 'an object', tuple: 'a list', null: 'null',
  };
  return nouns[expected] ?? expected;
}

function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

function valueAt(root: unknown, keys: readonly PropertyKey[]): unknown {
  return keys.reduce<unknown>((value, key) => (typeof value === 'object' && value !== null ? (value as never)[key] : undefined), root);
}
