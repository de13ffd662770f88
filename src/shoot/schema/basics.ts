/** The small things every part of the file is made of: names, figures, distances, places in space. */
import * as z from 'zod';

/** A key in a keyed map: letters, digits and hyphens, so that a path never needs escaping. Two words mean something else to every object. */
export const id = z.string().regex(/^(?!(?:constructor|prototype)$)[\p{L}\p{N}][\p{L}\p{N}-]{0,63}$/u, 'it must be letters, digits and hyphens, at most 64, and not the word constructor or prototype');
/** What would move a terminal's cursor, turn the direction of writing, or stand for no letter at all. */
const UNPRINTABLE = String.raw`\p{Cs}\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\u2028\u2029\u202A-\u202E\u2066-\u2069`;
/** A name for people, in any script, on one line. */
export const name = z.string().min(1).max(200).regex(new RegExp(`^[^${UNPRINTABLE}\\t\\r\\n]*$`, 'u'), 'it must be one line without control characters');
/** Free text for people. */
export const note = z.string().max(4000).regex(new RegExp(`^[^${UNPRINTABLE}]*$`, 'u'), 'it must not hold control characters');

/** Where a number comes from, ever less sure. */
export const BASES = ['measured', 'sheet', 'estimate', 'typical'] as const;
export const basis = z.enum(BASES);
export type Basis = z.infer<typeof basis>;

const span = {
  low: z.number().optional(),
  high: z.number().optional(),
  plusMinus: z.number().nonnegative().optional(),
  within: z.string().regex(/^\d+(\.\d+)?\s?%$/, 'it must be a percentage in text, such as "20%"').optional(),
  basis: basis.optional(),
  note: note.optional(),
  measuredOn: z.iso.date().optional(),
};

/** How a figure may be written: a bare number, or a number with its basis and bounds. One schema for each kind of number: the file has hundreds of figures. */
const stated = <T extends z.ZodType<number>>(number: T) => z.union([number, z.strictObject({ value: number, ...span })]);
const POSITIVE = stated(z.number().positive());
const NON_NEGATIVE = stated(z.number().nonnegative());
const ANY = stated(z.number());
const SHARE = stated(z.number().min(0).max(1));

const described = <T extends z.ZodType>(schema: T, description: string, measure?: string) =>
  schema.meta(measure === undefined ? { description } : { description, measure });

/**
 * A figure: a number that may be in doubt. `description` is its name for people; `measure` names the bench measurement that
 * gives it (`standards/benchMeasurements`). The unit is in the key.
 */
export const figure = {
  positive: (description: string, measure?: string) => described(POSITIVE, description, measure),
  nonNegative: (description: string, measure?: string) => described(NON_NEGATIVE, description, measure),
  any: (description: string, measure?: string) => described(ANY, description, measure),
  share: (description: string, measure?: string) => described(SHARE, description, measure),
};
export type StatedFigure = z.infer<ReturnType<typeof figure.any>>;

/** A plain number that is not in doubt: pixels, teeth, counts. */
export const whole = (description: string) => z.int().positive().meta({ description });
export const plain = (description: string) => z.number().meta({ description });

/** A distance in mm, or the word `infinity`. */
export const distanceMm = z.union([z.number().positive(), z.literal('infinity')]);

/** A place in a part's own frame, mm: +X camera left, +Y up, +Z towards the subject. */
export const place = z.tuple([z.number(), z.number(), z.number()]);
export type Place = z.infer<typeof place>;

/** A keyed map. */
export const mapOf = <T extends z.ZodType>(entry: T) => z.record(id, entry);
