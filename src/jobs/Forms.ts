import type * as z from 'zod';
import { shoot as shootSchema } from '../shoot/schema/shoot.ts';
import { part } from '../shoot/schema/part.ts';
import { inWords } from './nameOfPlace.ts';

/** How one place of the file is entered: the schema as plain data, so that the page can draw a form without the schema. */
export interface Form {
  readonly kind: 'figure' | 'number' | 'text' | 'choice' | 'flag' | 'distance' | 'group' | 'map' | 'list' | 'place' | 'setting' | 'fixed' | 'any';
  readonly says: string;
  readonly optional?: true;
  /** For a choice. */
  readonly options?: readonly string[];
  /** For a group. */
  readonly fields?: Readonly<Record<string, Form>>;
  /** For a map or a list: what each entry is. */
  readonly of?: Form;
}

export interface Forms {
  readonly shoot: Form;
  readonly part: Form;
}

/** Every place that can be entered, drawn from the schema. */
export const forms = (): Forms => ({ shoot: formOf(shootSchema, 'shoot'), part: formOf(part, 'part') });

interface Definition {
  readonly type: string;
  readonly innerType?: z.ZodType;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly valueType?: z.ZodType;
  readonly element?: z.ZodType;
  readonly options?: readonly z.ZodType[];
  readonly entries?: Readonly<Record<string, string>>;
  readonly items?: readonly z.ZodType[];
}

const definitionOf = (schema: z.ZodType): Definition => schema.def as unknown as Definition;

function formOf(schema: z.ZodType, key: string): Form {
  const def = definitionOf(schema);
  const says = (schema.meta()?.description as string | undefined) ?? inWords(key);
  if (def.innerType !== undefined) {
    const inner = formOf(def.innerType, key);
    const described = schema.meta()?.description as string | undefined;
    return { ...inner, ...(described === undefined ? {} : { says: described }), ...(def.type === 'optional' ? { optional: true as const } : {}) };
  }
  return { says, ...shapeOf(def) };
}

function shapeOf(def: Definition): Omit<Form, 'says'> {
  if (def.shape !== undefined) return { kind: 'group', fields: Object.fromEntries(Object.entries(def.shape).map(([key, one]) => [key, formOf(one, key)])) };
  if (def.valueType !== undefined) return { kind: 'map', of: formOf(def.valueType, '') };
  if (def.element !== undefined) return { kind: 'list', of: formOf(def.element, '') };
  if (def.entries !== undefined) return { kind: 'choice', options: Object.values(def.entries) };
  if (def.options !== undefined) return unionShape(def.options.map(definitionOf));
  if (def.items !== undefined) return { kind: def.items.length === 3 && def.items.every((one) => definitionOf(one).type === 'number') ? 'place' : 'any' };
  const plain: Readonly<Record<string, Form['kind']>> = { number: 'number', int: 'number', string: 'text', boolean: 'flag', literal: 'fixed' };
  return { kind: plain[def.type] ?? 'any' };
}

function unionShape(options: readonly Definition[]): Omit<Form, 'says'> {
  const types = options.map(({ type }) => type);
  if (types.includes('literal') && types.includes('number')) return { kind: 'distance' };
  if (types.length === 2 && types.includes('number') && options.some(({ shape }) => shape?.['plusMinus'] !== undefined)) return { kind: 'figure' };
  if (options.some(({ shape }) => shape?.['auto'] !== undefined)) return { kind: 'setting' };
  return { kind: 'any' };
}
