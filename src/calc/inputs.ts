/** The kinds of input a calculator takes. Each names its unit and says in words what it is; the range is the schema's. */
import * as z from 'zod';
import type { Unit } from '../units/Unit.ts';

// Made once: to describe a schema is to copy it, which is quicker than to make it.
const NUMBER = z.number();
const POSITIVE = NUMBER.positive();
const NON_NEGATIVE = NUMBER.nonnegative();
const SHARE = POSITIVE.max(1);
const FLAG = z.boolean();
const TEXT = z.string().max(200);

const describe = <T extends z.ZodType>(schema: T, unit: Unit | '', meaning: string): T => schema.meta({ unit, description: meaning });

/** More than zero. */
export const positive = (unit: Unit, meaning: string) => describe(POSITIVE, unit, meaning);
/** Zero or more. */
export const nonNegative = (unit: Unit, meaning: string) => describe(NON_NEGATIVE, unit, meaning);
/** Any finite number. */
export const finite = (unit: Unit, meaning: string) => describe(NUMBER, unit, meaning);
/** From `low` to `high`, both allowed. */
export const between = (low: number, high: number, unit: Unit, meaning: string) => describe(NUMBER.min(low).max(high), unit, meaning);
/** More than 0, at most 1. */
export const share = (meaning: string) => describe(SHARE, 'share', meaning);
/** A whole number from `least` on. */
export const whole = (least: number, unit: Unit, meaning: string) => describe(z.int().min(least), unit, meaning);
/** One of a few words. */
export const oneOf = <const T extends readonly [string, ...string[]]>(words: T, meaning: string) => describe(z.enum(words), '', meaning);
/** Yes or no. */
export const flag = (meaning: string) => describe(FLAG, '', meaning);
/** Free text. */
export const text = (meaning: string) => describe(TEXT, '', meaning);

/** A kind that may also be infinite: `null` in JSON, `Infinity` in code. */
export const orInfinity = <T extends z.ZodType<number>>(kind: T) =>
  kind.nullable().transform((value) => value ?? Infinity).meta(z.globalRegistry.get(kind) ?? {});

/** Named inputs, no others. */
export const inputs = <T extends z.ZodRawShape>(shape: T) => z.strictObject(shape);
