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
      if (answer.ok) expect(JSON.stringify(answer.value)).not.toContain('NaN');
      else expect(answer.faults.every((fault) => fault.message.length > 10)).toBe(true);
    }
  });
});

function inputShapes(schema: z.ZodType): Record<string, z.ZodType>[] {
  const def = (schema as unknown as { def: { type: string; shape?: Record<string, z.ZodType>; options?: z.ZodType[] } }).def;
  return def.type === 'union' ? (def.options ?? []).flatMap(inputShapes) : [def.shape ?? {}];
}

/** Copies of an input with one value spoilt in each of several ways. */
function brokenCopies(given: unknown): unknown[] {
  const spoilt = [-1, 0, 1e300, 1e-300, 'text', null, undefined, [], {}];
  return Object.keys(given as object).flatMap((key) => spoilt.map((value) => ({ ...(given as object), [key]: value })));
}
