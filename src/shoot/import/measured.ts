import * as z from 'zod';
import type { Fault, Outcome } from '../../faults/Fault.ts';
import { schemaFaults } from '../../faults/schemaFaults.ts';
import { type Edit, type Patch, applyEdit } from '../edit/Edit.ts';
import { readJson } from '../readJson.ts';
import { MEASURED_FORMAT, type Shoot } from '../schema/shoot.ts';

/** What a phone page gives back: figures measured on the day, and checks that are done. */
export const measured = z.strictObject({
  format: z.literal(MEASURED_FORMAT),
  version: z.literal(0),
  shoot: z.string().max(200),
  revision: z.string().max(60).optional(),
  figures: z.array(z.strictObject({ path: z.string().max(300), says: z.string().max(600).optional(), value: z.number(), measuredOn: z.iso.date() })).max(5000),
  ticks: z.record(z.string().min(1).max(300), z.iso.date()),
});
export type Measured = z.infer<typeof measured>;

/** Whether a text is such a file, or means to be one. */
export const looksMeasured = (text: string): boolean => text.slice(0, 400).includes(`"${MEASURED_FORMAT}"`);

export function readMeasured(text: string): Outcome<Measured> {
  const json = readJson(text);
  if (!json.ok) return json;
  const read = measured.safeParse(json.value);
  return read.success ? { ok: true, value: read.data, warnings: [] } : { ok: false, faults: schemaFaults(read.error, json.value, measured) };
}

export interface TakenIn {
  readonly shoot: Shoot;
  readonly figures: number;
  readonly ticks: number;
  /** What could not be taken in, and why; it loses nothing else. */
  readonly faults: readonly Fault[];
}

/** Takes measured figures and ticks into a shoot, one by one: one that does not fit loses no other. */
export function takeMeasured(shoot: Shoot, { figures, ticks }: Measured): TakenIn {
  let next = shoot;
  let taken = 0;
  const faults: Fault[] = [];
  for (const { path, says, value, measuredOn } of figures) {
    const edit = figureEdit(next, path, { value, basis: 'measured', measuredOn });
    if (edit === undefined) {
      faults.push({ path, message: `${says ?? 'This figure'} belongs to no part or copy of this kit.`, cure: 'Was the page printed from another shoot?' });
      continue;
    }
    const applied = applyEdit(next, edit);
    if (applied.ok) {
      next = applied.value.shoot;
      taken += 1;
    } else faults.push(...applied.faults);
  }
  const count = Object.keys(ticks).length;
  if (count > 0) {
    const applied = applyEdit(next, { says: `${count} checks done`, patches: [{ op: next.ticks === undefined ? 'add' : 'replace', path: 'ticks', value: { ...next.ticks, ...ticks } }] });
    if (applied.ok) next = applied.value.shoot;
    else faults.push(...applied.faults);
  }
  return { shoot: next, figures: taken, ticks: count, faults };
}

function figureEdit(shoot: Shoot, path: string, figure: { value: number; basis: 'measured'; measuredOn: string }): Edit | undefined {
  const [, parts, id = '', rest = ''] = /^kit\/(parts|copies)\/([^/]+)\/(.+)$/.exec(path) ?? [];
  if (parts === 'copies') {
    const copy = Object.hasOwn(shoot.kit.copies ?? {}, id) ? shoot.kit.copies?.[id] : undefined;
    const key = rest.startsWith('figures/') ? rest.slice('figures/'.length) : '';
    if (copy === undefined || key === '') return undefined;
    return edited({ op: copy.figures === undefined ? 'add' : 'replace', path: `kit/copies/${id}/figures`, value: { ...copy.figures, [key]: figure } });
  }
  const part = parts === 'parts' && Object.hasOwn(shoot.kit.parts, id) ? shoot.kit.parts[id] : undefined;
  if (part === undefined) return undefined;
  const there = rest.split('/').reduce<unknown>((value, key) => (typeof value === 'object' && value !== null && Object.hasOwn(value, key) ? (value as Record<string, unknown>)[key] : undefined), part);
  return edited({ op: there === undefined ? 'add' : 'replace', path, value: figure });
}

const edited = (patch: Patch): Edit => ({ says: 'a measured figure', patches: [patch] });
