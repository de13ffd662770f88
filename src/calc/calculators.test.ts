import { describe, expect, test } from 'vitest';
import type * as z from 'zod';
import type { AnyCalculator } from './calculator.ts';
import { catalogue } from './catalogue.generated.ts';

const all = await Promise.all(Object.entries(catalogue).map(async ([name, load]) => [name, await load()] as const));

/** Holds a value to printed digits: half a unit of the last one. */
function expectPrinted(actual: unknown, printed: unknown): void {
  if (typeof printed !== 'string' || Number.isNaN(Number(printed))) {
    expect(actual).toEqual(printed === null ? Infinity : printed);
    return;
  }
  const [mantissa = '', exponent = '0'] = printed.toLowerCase().split('e');
  const decimals = (mantissa.split('.')[1] ?? '').length - Number(exponent);
  expect(Math.abs(Number(actual) - Number(printed)), `${String(actual)} against printed ${printed}`).toBeLessThanOrEqual(0.5000001 * 10 ** -decimals);
}

test('the catalogue is not empty', () => expect(all.length).toBeGreaterThan(0));

describe.each(all)('%s', (name: string, one: AnyCalculator) => {
  test('is named for its file, and each input says what it is', () => {
    expect(one.contract.name).toBe(name);
    for (const shape of inputShapes(one.contract.inputs)) {
      for (const [key, schema] of Object.entries(shape)) expect(schema.meta()?.description, `${name} ${key}`).toBeTruthy();
    }
  });

  test('gives the digits its sources print', () => {
    for (const { given, gives } of one.contract.examples) {
      const answer = one.answer(given);
      if (!answer.ok) throw new Error(JSON.stringify(answer.faults));
      expect(Object.keys(answer.value).every((key) => key in one.contract.results)).toBe(true);
      for (const [key, printed] of Object.entries(gives)) expectPrinted((answer.value as Record<string, unknown>)[key], printed);
    }
  });

  test('answers every broken input with a fault, never with an exception', () => {
    for (const input of [null, 3, 'text', [], {}, { nonsense: 1 }, ...brokenCopies(one.contract.examples[0].given)]) {
      const answer = one.answer(input);
      if (answer.ok) expect(undocumented(answer.value, one.contract.results as Readonly<Record<string, string>>), JSON.stringify(input)).toEqual([]);
      else for (const { message } of answer.faults) expect(message.replaceAll(/"[^"]*"/g, '')).toMatch(/^(?!.*(NaN|Infinity|undefined|\[object|9007199254740991)).{10,}/);
    }
  });
});

function inputShapes(schema: z.ZodType): Record<string, z.ZodType>[] {
  const def = (schema as unknown as { def: { type: string; shape?: Record<string, z.ZodType>; options?: z.ZodType[] } }).def;
  return def.type === 'union' ? (def.options ?? []).flatMap(inputShapes) : [def.shape ?? {}];
}

/** Keys of a result that hold what is no number, or an infinity their contract does not speak of. */
function undocumented(value: object, results: Readonly<Record<string, string>>): string[] {
  const holds = (one: unknown, wrong: (number: number) => boolean): boolean =>
    typeof one === 'number' ? wrong(one) : typeof one === 'object' && one !== null && Object.values(one).some((inner) => holds(inner, wrong));
  return Object.entries(value).filter(([key, one]) => holds(one, Number.isNaN) || (results[key]?.includes('null') !== true && holds(one, (number) => Math.abs(number) === Infinity))).map(([key]) => key);
}

/** Copies of an input with one value, at any depth, spoilt in each of several ways. */
function brokenCopies(given: unknown): unknown[] {
  const spoilt = [-1, 0, -0, 1e300, 1e-300, 'text', null, undefined, [], {}];
  const places = placesIn(given).slice(0, 60);
  return places.flatMap((place) => spoilt.map((value) => withValue(given, place, value)));
}

function placesIn(given: unknown, above: readonly string[] = []): string[][] {
  if (typeof given !== 'object' || given === null) return [];
  return Object.entries(given).flatMap(([key, inner]) => [[...above, key], ...placesIn(inner, [...above, key])]).toSorted((a, b) => a.length - b.length);
}

function withValue(given: unknown, [key, ...rest]: readonly string[], value: unknown): unknown {
  if (key === undefined) return value;
  const inner = withValue((given as Record<string, unknown>)[key], rest, value);
  return Array.isArray(given) ? given.with(Number(key), inner) : { ...(given as object), [key]: inner };
}
