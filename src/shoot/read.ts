import type * as z from 'zod';
import type { Fault, Outcome } from '../faults/Fault.ts';
import { schemaFaults } from '../faults/schemaFaults.ts';
import { metricCure } from '../units/metricNumber.ts';
import { absurdities } from './absurdities.ts';
import { migrate } from './migrate.ts';
import { readJson } from './readJson.ts';
import { brokenReferences } from './references.ts';
import { statedElsewhere } from './statedElsewhere.ts';
import { unknownClasses } from './unknownClasses.ts';
import { FORMAT, KIT_FORMAT, MEASURED_FORMAT, type Shoot, kitFile, shoot } from './schema/shoot.ts';
import type { Kit } from './schema/part.ts';

/**
 * Reads a shoot file's text: all faults at once, each with its place and what would be right. Unknown keys are kept and
 * reported as warnings. The value is the file's own data, unchanged.
 */
export function readShoot(text: string): Outcome<Shoot> {
  const json = readJson(text);
  return json.ok ? checkShoot(json.value) : json;
}

/** The same for data that is already parsed. */
export function checkShoot(data: unknown): Outcome<Shoot> {
  const current = migrate(data);
  if (!current.ok) return current;
  const wrongFormat = formatFault(current.value, FORMAT);
  if (wrongFormat !== undefined) return { ok: false, faults: [wrongFormat] };
  return shaped(shoot, current.value, (value) => [...brokenReferences(value), ...statedElsewhere(value), ...unknownClasses(value.kit), ...absurdities(value)]);
}

/** Reads a kit file's text. */
export function readKit(text: string): Outcome<Kit> {
  const json = readJson(text);
  if (!json.ok) return json;
  const wrongFormat = formatFault(json.value, KIT_FORMAT);
  return wrongFormat === undefined ? shaped(kitFile, json.value, (value) => [...statedElsewhere({ kit: value }), ...unknownClasses(value), ...absurdities(value)]) : { ok: false, faults: [wrongFormat] };
}

function shaped<T>(schema: z.ZodType<T>, data: unknown, furtherFaults: (value: T) => Fault[]): Outcome<T> {
  const read = schema.safeParse(data);
  const found = read.success ? [] : schemaFaults(read.error, data, schema, metricCure);
  const value = data as T;
  const faults = found.some(stops) ? found : [...found, ...furtherFaults(value)];
  const warnings = faults.filter((fault) => !stops(fault));
  return faults.some(stops) ? { ok: false, faults: [...faults.filter(stops), ...warnings] } : { ok: true, value, warnings };
}

const stops = ({ severity }: Fault): boolean => severity === undefined;

/** What the file is instead, where it is one of ours. */
const CURES: ReadonlyMap<unknown, string> = new Map([
  [KIT_FORMAT, 'This is a kit alone; a shoot has builds and setups too.'], [FORMAT, 'This is a whole shoot, not a kit alone.'],
  [MEASURED_FORMAT, 'This was given back by a phone page: setworthy import takes it into a shoot.'],
]);

function formatFault(data: unknown, wanted: string): Fault | undefined {
  const found = typeof data === 'object' && data !== null ? (data as Record<string, unknown>)['format'] : undefined;
  if (found === wanted) return undefined;
  const shown = JSON.stringify(found)?.slice(0, 60) ?? 'nothing';
  return { path: 'format', message: `Found ${shown}; "format" must be "${wanted}".`, cure: CURES.get(found) ?? 'Is this the right file?' };
}
