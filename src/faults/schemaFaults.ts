import type * as z from 'zod';
import type { Fault } from './Fault.ts';
import { nearestName } from './nearestName.ts';

/** What to write under a key instead of a text, where a number was meant. */
type NumberCure = (key: string, typed: string) => string | undefined;

/** The faults a schema found in a value, all of them, each with its own path and what would be right. */
export function schemaFaults(error: z.ZodError, root: unknown, schema: z.ZodType, numberCure: NumberCure = () => undefined): Fault[] {
  return error.issues.flatMap((issue) => issueFaults(issue, { root, schema, numberCure }, []));
}

type Issue = z.core.$ZodIssue;
interface Read {
  readonly root: unknown;
  readonly schema: z.ZodType;
  readonly numberCure: NumberCure;
}

function issueFaults(issue: Issue, read: Read, prefix: readonly PropertyKey[]): Fault[] {
  const keys = [...prefix, ...issue.path];
  const path = pathOf(keys);
  const found = valueAt(read.root, keys);
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({
        path: pathOf([...keys, key]),
        message: `There is no key ${shown(key)} here.`,
        ...keyCure(key, knownKeys(read.schema, keys)),
        severity: 'unknown key' as const,
      }));
    case 'invalid_type':
      return [
        found === undefined
          ? { path, message: `This is missing; it must be ${nounFor(issue.expected)}.` }
          : { path, message: `Found ${shown(found)}; it must be ${nounFor(issue.expected)}.`, ...plainNumberCure(found, new Set([nounFor(issue.expected)]), read, keys) },
      ];
    case 'invalid_value':
      return [
        {
          path,
          message: `Found ${shown(found)}; allowed: ${issue.values.map(shown).join(', ')}.`,
          ...(typeof found === 'string' ? cureFor(found, issue.values.filter((value) => typeof value === 'string')) : {}),
        },
      ];
    case 'too_small':
      return [{ path, message: outOfBounds(found, issue, issue.minimum, ['more than', 'at least']) }];
    case 'too_big':
      return [{ path, message: outOfBounds(found, issue, issue.maximum, ['less than', 'at most']) }];
    case 'invalid_union':
      return unionFaults(issue, read, keys);
    case 'invalid_key':
      return [{ path, message: `${shown(String(keys.at(-1)))} cannot be a name here: ${issue.issues[0]?.message ?? 'it is not allowed'}` }];
    case 'invalid_format':
      return [{ path, message: `Found ${shown(found)}; ${issue.message}.` }];
    default:
      return [{ path, message: issue.message }];
  }
}

/** Of a union's branches, the one that got furthest is the one that was meant. */
function unionFaults(issue: Issue & { code: 'invalid_union' }, read: Read, keys: readonly PropertyKey[]): Fault[] {
  const depth = (branch: readonly Issue[]) => Math.max(0, ...branch.map((one) => one.path.length));
  const wrongKind = (branch: readonly Issue[]) => branch.some((one) => one.path.length === 0 && one.code === 'invalid_type');
  const isWord = (branch: readonly Issue[]) => branch.every((one) => one.path.length === 0 && one.code === 'invalid_value');
  const branches = issue.errors.filter((branch) => !wrongKind(branch) && !isWord(branch));
  const meant = branches.toSorted((a, b) => depth(b) - depth(a) || a.length - b.length)[0];
  if (meant !== undefined) return meant.flatMap((one) => issueFaults(one, read, keys));
  const kinds = new Set(issue.errors.flat().flatMap((one) => (one.code === 'invalid_type' ? [nounFor(one.expected)] : one.code === 'invalid_value' ? one.values.map(shown) : ['another value'])));
  const found = valueAt(read.root, keys);
  return [{ path: pathOf(keys), message: `Found ${shown(found)}; it must be ${[...kinds].join(' or ')}.`, ...plainNumberCure(found, kinds, read, keys) }];
}

/** "2.8" or "2.4 kg" or `5'6"` where a number was wanted. */
function plainNumberCure(found: unknown, kinds: ReadonlySet<string>, { numberCure }: Read, keys: readonly PropertyKey[]): { cure?: string } {
  if (typeof found !== 'string' || !(kinds.has('a number') || kinds.has('a whole number'))) return {};
  const key = keys.findLast((one) => typeof one === 'string' && !PARTS_OF_A_FIGURE.has(one));
  const cure = numberCure(String(key ?? ''), found);
  if (cure !== undefined) return { cure };
  return /\d/.test(found) ? { cure: 'Write the number alone, without quotation marks, in the unit that the key ends with.' } : {};
}

/** A figure's own keys carry no unit: the key it stands under does. */
const PARTS_OF_A_FIGURE: ReadonlySet<string> = new Set(['value', 'low', 'high', 'plusMinus']);

/** What is wrong with a size: of a number, of a text, of a list. */
function outOfBounds(found: unknown, issue: { origin: string; inclusive?: boolean | undefined }, limit: number | bigint, [beyond, upTo]: readonly [string, string]): string {
  if (Math.abs(Number(limit)) === Number.MAX_SAFE_INTEGER) return `Found ${shown(found)}; that is too large for a whole number.`;
  const wanted = `${issue.inclusive === false ? beyond : upTo} ${limit}`;
  if (Array.isArray(found)) return `Found ${found.length === 0 ? 'an empty list' : `a list of ${found.length}`}; it must hold ${wanted} ${Number(limit) === 1 ? 'entry' : 'entries'}.`;
  if (typeof found === 'string') return `Found ${found === '' ? 'an empty text' : shown(found)}; it must be ${wanted} ${Number(limit) === 1 ? 'character' : 'characters'} long.`;
  return `Found ${shown(found)}; it must be ${wanted}.`;
}

/** Names from the top; one that goes on and on is cut. */
function pathOf(keys: readonly PropertyKey[]): string {
  return keys.map((key) => cut(String(key), 100).replaceAll(/[\p{Cc}\p{Cs}\u2028-\u202E\u2066-\u2069]/gu, '\uFFFD')).join('/');
}

const cut = (text: string, most: number): string => (text.length > most ? `${text.slice(0, most - 3)}…` : text);

function cureFor(found: string, known: Iterable<string>): { cure?: string } {
  const near = nearestName(found, known);
  return near === undefined ? {} : { cure: `Did you mean "${near}"?` };
}

/** The key that was meant: the nearest by its letters, else the longest that one begins with or that begins with it, such as `out` for "outward". */
function keyCure(found: string, known: readonly string[]): { cure?: string } {
  const near = cureFor(found, known);
  if (near.cure !== undefined || found.length < 2) return near;
  const low = found.toLowerCase();
  const begun = known.filter((key) => key.length > 1 && (low.startsWith(key.toLowerCase()) || key.toLowerCase().startsWith(low))).toSorted((a, b) => b.length - a.length);
  return begun[0] === undefined ? {} : { cure: `Did you mean "${begun[0]}"?` };
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
  // JSON text may hold 1e999, which no number can.
  if (value === Infinity || value === -Infinity) return 'a number too large to hold';
  return cut(JSON.stringify(value) ?? String(value), 60);
}

function valueAt(root: unknown, keys: readonly PropertyKey[]): unknown {
  return keys.reduce<unknown>((value, key) => (typeof value === 'object' && value !== null ? (value as never)[key] : undefined), root);
}
