import type * as z from 'zod';
import { assumptionCatalogue } from '../standards/assumptions/index.generated.ts';
import { part } from '../shoot/schema/part.ts';
import { shoot as shootSchema } from '../shoot/schema/shoot.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { keysOfPath, valueAt } from './place.ts';

export interface PlaceName {
  /** What stands there. */
  readonly says: string;
  /** Whose it is. */
  readonly of: string;
  /** For a default: its source. */
  readonly source?: string;
  /** A plain number, not in doubt: it takes neither basis nor bounds. */
  readonly plain?: true;
}

/** Names a place in the file for people, in the schema's own words. */
export function nameOfPlace(shoot: Shoot, path: string): PlaceName {
  const assumed = path.startsWith('assumptions/') ? assumptionCatalogue[path.slice('assumptions/'.length)] : undefined;
  if (assumed !== undefined) return { says: assumed.says, of: '', source: assumed.source };
  const copyFigure = /^kit\/copies\/([^/]+)\/figures\/(.+)$/.exec(path);
  const schema = copyFigure === null ? schemaAt(shootSchema, keysOfPath(path)) : schemaAt(part, (copyFigure[2] ?? '').split('/'));
  const says = schema === undefined ? undefined : wordsOf(schema);
  const isPlain = schema !== undefined && ['number', 'int'].includes(innermost(schema).def.type);
  return { says: says ?? inWords(path.slice(path.lastIndexOf('/') + 1)), of: ownerOf(shoot, path), ...(isPlain ? { plain: true } : {}) };
}

/** The nearest thing above a place that has a name. */
function ownerOf(shoot: Shoot, path: string): string {
  const keys = keysOfPath(path);
  for (let length = keys.length - 1; length > 0; length -= 1) {
    const holder = valueAt(shoot, keys.slice(0, length).join('/'));
    if (typeof holder !== 'object' || holder === null) continue;
    const { name, role, of, who } = holder as Record<string, unknown>;
    if (typeof name === 'string') return name;
    if (typeof of === 'string') return ((valueAt(shoot, `kit/parts/${of}/name`) ?? valueAt(shoot, `kit/copies/${of}/name`)) as string | undefined) ?? of;
    if (typeof role === 'string') return role;
    if (typeof who === 'string') return ((valueAt(shoot, `crew/${who}/name`) ?? valueAt(shoot, `crew/${who}/role`)) as string | undefined) ?? who;
  }
  return keys[0] ?? '';
}

interface Definition {
  readonly innerType?: z.ZodType;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly valueType?: z.ZodType;
  readonly element?: z.ZodType;
}

const definitionOf = (schema: z.ZodType): Definition => schema.def as unknown as Definition;

const innermost = (schema: z.ZodType): z.ZodType => {
  const { innerType } = definitionOf(schema);
  return innerType === undefined ? schema : innermost(innerType);
};

function wordsOf(schema: z.ZodType): string | undefined {
  const { innerType } = definitionOf(schema);
  return (schema.meta()?.description as string | undefined) ?? (innerType === undefined ? undefined : wordsOf(innerType));
}

function schemaAt(schema: z.ZodType, [key, ...rest]: readonly string[]): z.ZodType | undefined {
  if (key === undefined) return schema;
  const def = definitionOf(innermost(schema));
  const next = def.shape?.[key] ?? def.valueType ?? def.element;
  return next === undefined ? undefined : schemaAt(next, rest);
}

const UNIT_ENDING = /(CdPerM2|NmPerRad|NPerMm|Arcmin|Gbps|Mbps|Mps|MHz|GPa|Rpm|Lux|Dbm|Dbi|Deg|Dpt|Ohm|Hz|Db|Min|Mm2|Mm|Ms|Nm|Px|Ah|Wh|Hours|Nm|M|S|V|A|W|C|G|N)$/;

/** A key as words: `whiteCdPerM2` is "white", `linkDistanceM` "link distance". */
export function inWords(key: string): string {
  const bare = key.replace(UNIT_ENDING, '');
  return (bare === '' ? key : bare).replaceAll('-', ' ').replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
}
