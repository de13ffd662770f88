import type * as z from 'zod';
import type { Fault } from '../faults/Fault.ts';
import { nearestName } from '../faults/nearestName.ts';
import { schemaFaults } from '../faults/schemaFaults.ts';
import { assumptionCatalogue } from '../standards/assumptions/index.generated.ts';
import { metricCure } from '../units/metricNumber.ts';
import { figure } from './schema/basics.ts';
import { part } from './schema/part.ts';
import type { Shoot } from './schema/shoot.ts';

/**
 * Faults in what is stated away from its place: a copy's own figures, named by their path in the part, and figures in place of
 * the program's defaults. A name that leads nowhere changes nothing; it is reported and kept, as an unknown key is.
 */
export function statedElsewhere({ kit, assumptions = {} }: Pick<Shoot, 'kit' | 'assumptions'>): Fault[] {
  const copies = Object.entries(kit.copies ?? {}).flatMap(([id, { figures = {} }]) => Object.entries(figures).flatMap(([path, stated]) => copyFigure(`kit/copies/${id}/figures`, path, stated)));
  return [...copies, ...Object.entries(assumptions).flatMap(([key, stated]) => assumption(key, stated))];
}

function copyFigure(at: string, path: string, stated: unknown): Fault[] {
  const schema = path.split('/').reduce<z.ZodType | undefined>((inner, key) => inner && within(inner, key), part);
  if (schema === undefined) return [{ path: `${at}/${path}`, message: `There is nothing at "${path}" in a part, so that this changes nothing.`, cure: 'Name it by its path in the part, such as focus/ringTorqueNm.', severity: 'unknown key' }];
  return faultsAt(`${at}/${path}`, schema, stated);
}

function assumption(key: string, stated: unknown): Fault[] {
  const path = `assumptions/${key}`;
  const known = Object.hasOwn(assumptionCatalogue, key) ? assumptionCatalogue[key] : undefined;
  if (known !== undefined) return faultsAt(path, known.divides === true ? figure.positive('') : known.low >= 0 ? figure.nonNegative('') : figure.any(''), stated);
  const near = nearestName(key, Object.keys(assumptionCatalogue));
  return [{ path, message: `There is no assumption "${key}", so that this changes nothing.`, ...(near === undefined ? {} : { cure: `Did you mean "${near}"?` }), severity: 'unknown key' }];
}

function faultsAt(path: string, schema: z.ZodType, stated: unknown): Fault[] {
  const read = schema.safeParse(stated);
  return read.success ? [] : schemaFaults(read.error, stated, schema, (key, typed) => metricCure(key === '' ? path.slice(path.lastIndexOf('/') + 1) : key, typed)).map((fault) => ({ ...fault, path: fault.path === '' ? path : `${path}/${fault.path}` }));
}

/** The schema of what stands under a key, or `undefined` where nothing may. */
function within(schema: z.ZodType, key: string): z.ZodType | undefined {
  const { innerType, shape, valueType, element, items, options } = schema.def as Definition;
  if (innerType !== undefined) return within(innerType, key);
  if (options !== undefined) return options.map((option) => within(option, key)).find((found) => found !== undefined);
  if (shape !== undefined) return Object.hasOwn(shape, key) ? shape[key] : undefined;
  return valueType ?? element ?? items?.[Number(key)];
}

interface Definition {
  readonly innerType?: z.ZodType;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly valueType?: z.ZodType;
  readonly element?: z.ZodType;
  readonly items?: readonly z.ZodType[];
  readonly options?: readonly z.ZodType[];
}
