import type * as z from 'zod';
import type { AnyCalculator } from '../calc/calculator.ts';
import { hanging, wrap } from './wrap.ts';

type Contract = AnyCalculator['contract'];

/** A calculator's contract as text: inputs, results, formula, source, example. */
export function aboutCalculator(contract: Contract, columns: number): string {
  const inputs = describeInputs(contract.inputs, '');
  const results = Object.entries(contract.results as Record<string, string>);
  const widest = Math.max(...inputs.map(({ key }) => key.length), ...results.map(([key]) => key.length));
  const row = (key: string, text: string) => hanging(`  ${key.padEnd(widest)}  `, text, columns, ' '.repeat(widest + 4));
  const said = (text: string) => wrap(text, columns, '  ');
  const example = contract.examples[0];
  return [
    wrap(`${contract.name}: ${contract.sentence}`, columns),
    '', 'takes', ...inputs.map(({ key, says }) => row(key, says)),
    '', 'gives', ...results.map(([key, says]) => row(key, says)),
    '', 'formula', said(contract.formula),
    '', 'source', said(contract.source),
    '', `example (${example.source})`, `  setworthy calc ${contract.name} '${JSON.stringify(example.given)}'`, `  gives ${Object.entries(example.gives).map(([key, printed]) => `${key} ${String(printed)}`).join(', ')}`,
    '',
  ].join('\n');
}

interface Row {
  readonly key: string;
  readonly says: string;
}

interface Definition {
  readonly type: string;
  readonly shape?: Record<string, z.ZodType>;
  readonly options?: readonly z.ZodType[];
  readonly element?: z.ZodType;
  readonly innerType?: z.ZodType;
  readonly in?: z.ZodType;
}

function describeInputs(schema: z.ZodType, prefix: string): Row[] {
  const def = schema.def as unknown as Definition;
  if (def.type === 'union' && prefix === '') {
    const rows = (def.options ?? []).flatMap((option) => describeInputs(option, prefix));
    return rows.filter(({ key }, at) => rows.findIndex((other) => other.key === key) === at);
  }
  return Object.entries(def.shape ?? {}).flatMap(([key, inner]) => [{ key: `${prefix}${key}`, says: wordsFor(inner) }, ...innerRows(inner, `${prefix}${key}`)]);
}

/** The keys of objects inside lists and options. */
function innerRows(schema: z.ZodType, prefix: string): Row[] {
  const def = schema.def as unknown as Definition;
  if (def.element !== undefined) return def.element.def.type === 'object' ? describeInputs(def.element, `${prefix}[].`) : [];
  const inner = def.innerType ?? def.in;
  if (inner !== undefined) return innerRows(inner, prefix);
  return def.shape === undefined ? [] : describeInputs(schema, `${prefix}.`);
}

function wordsFor(schema: z.ZodType): string {
  const meta = metaOf(schema);
  const json = schema.toJSONSchema({ io: 'input', unrepresentable: 'any' }) as Range;
  return [unitWord(meta?.unit), rangeOf(json), meta?.description ?? ''].filter((text) => text !== '').join('; ');
}

/** Unit and description; an optional input, or one with a default, has them inside. */
function metaOf(schema: z.ZodType): { unit?: string; description?: string } | undefined {
  const { innerType } = schema.def as unknown as Definition;
  return (schema.meta() as { unit?: string; description?: string } | undefined) ?? (innerType && metaOf(innerType));
}

const unitWord = (unit: string | undefined): string => unit ?? '';

interface Range {
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly (Range & { type?: string })[];
}

function rangeOf(range: Range): string {
  if (range.enum !== undefined) return range.enum.map((word) => JSON.stringify(word)).join(' | ');
  if (range.anyOf !== undefined) {
    const infinite = range.anyOf.some(({ type }) => type === 'null') ? ', or null for infinity' : '';
    return `${rangeOf(range.anyOf.find(({ type }) => type !== 'null') ?? {})}${infinite}`;
  }
  const largest = range.maximum !== undefined && range.maximum < Number.MAX_SAFE_INTEGER ? `at most ${range.maximum}` : range.exclusiveMaximum === undefined ? '' : `below ${range.exclusiveMaximum}`;
  const least = range.exclusiveMinimum !== undefined ? `above ${range.exclusiveMinimum}` : range.minimum !== undefined && range.minimum > Number.MIN_SAFE_INTEGER ? `at least ${range.minimum}` : '';
  return [least, largest].filter((text) => text !== '').join(', ');
}
