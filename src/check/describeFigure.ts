import type * as z from 'zod';
import type { Ledger } from '../shoot/ledger/Ledger.ts';
import { PartView } from '../shoot/ledger/PartView.ts';
import { part as partSchema } from '../shoot/schema/part.ts';
import { assumptionCatalogue } from '../standards/assumptions/index.generated.ts';
import { BENCH_MEASUREMENTS } from '../standards/benchMeasurements.ts';
import type { Missing } from './answer.ts';

/** Names a figure of a part for people, and the bench measurement that would give it, from the schema's own words. */
export function describeFigure(part: PartView, path: string): Missing {
  const meta = metaAt(partSchema, path.split('/'));
  const says = `${meta?.description ?? path} of ${part.name}`;
  const measure = meta?.measure === undefined ? undefined : BENCH_MEASUREMENTS[meta.measure];
  return { path: `${part.path}/${path}`, says, ...(measure === undefined ? {} : { measure: measure.how }) };
}

/** The bench measurement that gives the figure at a path of the file, by its name; only parts have such figures. */
export function measureOf(path: string): string | undefined {
  const inPart = /^kit\/(?:parts\/[^/]+|copies\/[^/]+\/figures)\/(.+)$/.exec(path)?.[1];
  return inPart === undefined ? undefined : metaAt(partSchema, inPart.split('/'))?.measure;
}

/** What the figure at a path of the file is, in words: "image circle of the 58 mm taking lens"; its key where nothing better is known. */
export function figureName(ledger: Ledger, path: string): string {
  const [, id = '', inPart = ''] = /^kit\/(?:parts|copies)\/([^/]+)\/(?:figures\/)?(.+)$/.exec(path) ?? [];
  if (id !== '') return `${metaAt(partSchema, inPart.split('/'))?.description ?? wordsOf(inPart)} of ${new PartView(ledger, id).name}`;
  const assumed = path.startsWith('assumptions/') ? assumptionCatalogue[path.slice('assumptions/'.length)] : undefined;
  return assumed?.says ?? wordsOf(path);
}

/** `linkDistanceM` as "link distance". */
function wordsOf(path: string): string {
  const key = path.slice(path.lastIndexOf('/') + 1);
  return key.replace(/(Mm|Px|Deg|Nm|Ms|Hz|Lux|Hours|S|M|C|G|V|A|W)$/, '').replaceAll(/([A-Z])/g, ' $1').toLowerCase();
}

interface Words {
  readonly description?: string;
  readonly measure?: string;
}

function metaAt(schema: z.ZodType, keys: readonly string[]): Words | undefined {
  const [key, ...rest] = keys;
  const def = schema.def as unknown as { type: string; innerType?: z.ZodType; shape?: Record<string, z.ZodType>; valueType?: z.ZodType; element?: z.ZodType };
  if (key === undefined) return (schema.meta() as Words | undefined) ?? (def.innerType === undefined ? undefined : metaAt(def.innerType, []));
  if (def.innerType !== undefined) return metaAt(def.innerType, keys);
  const next = def.shape?.[key] ?? def.valueType ?? def.element;
  return next === undefined ? undefined : metaAt(next, rest);
}
