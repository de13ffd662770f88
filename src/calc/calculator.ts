import * as z from 'zod';
import type { Fault, Outcome } from '../faults/Fault.ts';
import { schemaFaults } from '../faults/schemaFaults.ts';
import { metricCure } from '../units/metricNumber.ts';

/** What a calculator promises, as data: the command prints it, the tests run its examples, the callers read it. */
export interface Contract<Inputs extends z.ZodType, Results extends object> {
  /** Room and name as at the command line, for example `optics.depthOfField`. */
  readonly name: string;
  /** What it computes, in one sentence. */
  readonly sentence: string;
  /** Each input with unit and range (see `inputs.ts`). */
  readonly inputs: Inputs;
  /** Each result: unit and meaning, and what infinity (`null` in JSON) means where it can be. */
  readonly results: { readonly [Key in keyof Required<Results>]: string };
  /** The equations, in plain characters, with the names of the inputs or the usual letters explained. */
  readonly formula: string;
  /** Where the equations come from, and where this departs from them. */
  readonly source: string;
  /** Worked cases from the source; results are written as printed there, and held to those digits. */
  readonly examples: readonly [Example<z.input<Inputs>, Results>, ...Example<z.input<Inputs>, Results>[]];
}

export interface Example<Inputs, Results> {
  readonly given: Inputs;
  /** Printed digits as text: `"2.309"` holds the result to half a unit of the last digit. Other values are held exactly. */
  readonly gives: { readonly [Key in keyof Results]?: string | boolean | null };
  /** Whose numbers they are. */
  readonly source: string;
}

/** A pure function with named arguments that carries its contract and can answer unchecked outside input. */
export interface Calculator<Inputs extends z.ZodType, Results extends object> {
  (given: z.output<Inputs>): Results;
  readonly contract: Contract<Inputs, Results>;
  /** Checks outside input against the contract, then computes; `null` in JSON stands for infinity. */
  readonly answer: (input: unknown) => Outcome<Results>;
}

/** A calculator of any shape, for lists of them. */
export type AnyCalculator = Calculator<z.ZodType, object>;

/** Thrown where inputs within their ranges have no answer: a load that no voltage can feed. Names the input at fault. */
export class NoAnswer extends Error {
  readonly path: string;
  constructor(path: string, message: string) {
    super(message);
    this.name = 'NoAnswer';
    this.path = path;
  }
}

/** Makes a calculator of a contract and the function that keeps it. */
export function calculator<Inputs extends z.ZodType, Results extends object>(
  contract: Contract<Inputs, NoInfer<Results>>,
  compute: (given: z.output<Inputs>) => Results,
): Calculator<Inputs, Results> {
  const answer = (input: unknown): Outcome<Results> => {
    const read = contract.inputs.safeParse(input);
    if (!read.success) return { ok: false, faults: schemaFaults(read.error, input, contract.inputs, metricCure) };
    try {
      const value = compute(plainZeros(read.data));
      const broken = notANumberAt(value, '') ?? unforeseenInfinity(value, contract.results);
      return broken === undefined ? { ok: true, value, warnings: [] } : { ok: false, faults: [tooExtreme(broken)] };
    } catch (thrown) {
      if (thrown instanceof NoAnswer) return { ok: false, faults: [{ path: thrown.path, message: thrown.message }] };
      throw thrown;
    }
  };
  return Object.assign((given: z.output<Inputs>) => compute(given), { contract, answer });
}

function tooExtreme(resultPath: string): Fault {
  return { path: '', message: `These inputs are too extreme to compute ${resultPath}.`, cure: 'Check their units.' };
}

/** JSON may hold −0, over which a division would run to minus infinity. */
function plainZeros<T>(data: T): T {
  if (typeof data !== 'object' || data === null) return (data === 0 ? 0 : data) as T;
  if (Array.isArray(data)) return data.map(plainZeros) as T;
  return Object.fromEntries(Object.entries(data).map(([key, inner]) => [key, plainZeros<unknown>(inner)])) as T;
}

/** A result that overflowed: infinite, at any depth, where its contract does not say what `null` would mean. */
function unforeseenInfinity(value: object, results: Readonly<Record<string, string>>): string | undefined {
  return Object.entries(value).find(([key, one]) => results[key]?.includes('null') !== true && holdsInfinity(one))?.[0];
}

function holdsInfinity(value: unknown): boolean {
  if (typeof value === 'number') return value === Infinity || value === -Infinity;
  return typeof value === 'object' && value !== null && Object.values(value).some(holdsInfinity);
}

/** The path of the first number in a result that is not one, or `undefined`. */
function notANumberAt(value: unknown, path: string): string | undefined {
  if (typeof value === 'number') return Number.isNaN(value) ? path : undefined;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = notANumberAt(inner, path === '' ? key : `${path}/${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}
