import type { Fault } from '../faults/Fault.ts';
import type { Edid } from '../shoot/edid/readEdid.ts';
import { readEdid } from '../shoot/edid/readEdid.ts';
import { addParts } from '../shoot/edit/addParts.ts';
import type { Edit } from '../shoot/edit/Edit.ts';
import { importKitCsv } from '../shoot/import/importKitCsv.ts';
import type { Part } from '../shoot/schema/part.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';

/** Parts to be taken in, and what was left out with its place and cure. */
export interface Taking {
  readonly edit: Edit | undefined;
  readonly faults: readonly Fault[];
}

/** Parts of a table; one bad row loses no other. */
export function takingCsv(shoot: Shoot, text: string): Taking {
  const { parts, faults } = importKitCsv(text, [...Object.keys(shoot.kit.parts), ...Object.keys(shoot.kit.copies ?? {})]);
  const count = Object.keys(parts).length;
  return { edit: count === 0 ? undefined : addParts(parts, `${count} parts from a table`), faults: faults.map(({ row, column, ...fault }) => ({ ...fault, path: `row ${row}${column === undefined ? '' : `, column ${column}`}` })) };
}

/** The screen that an EDID describes, as a monitor with one input: what it does not say is left to be entered. */
export function takingEdid(shoot: Shoot, content: Uint8Array | string): Taking {
  const read = readEdid(content);
  if (!read.ok) return { edit: undefined, faults: read.faults };
  const part = monitorOf(read.value);
  const free = (at: number): string => (shoot.kit.parts[`screen-${at}`] === undefined ? `screen-${at}` : free(at + 1));
  return { edit: addParts({ [free(1)]: part }, `${part.name} from its EDID`), faults: read.warnings };
}

function monitorOf({ name, physicalSizeMm, formats }: Edid): Part {
  const largest = formats.toSorted((a, b) => b.widthPx * b.heightPx - a.widthPx * a.heightPx)[0];
  const diagonalMm = physicalSizeMm === undefined ? undefined : Math.round(Math.hypot(physicalSizeMm.widthMm, physicalSizeMm.heightMm));
  return {
    name: name ?? 'Screen', kind: 'monitor', note: 'From its EDID: the panel is taken to have the pixels of its largest format.', basis: 'sheet',
    ports: { hdmi: { kind: 'video', way: 'in', connector: 'HDMI A', sex: 'female', video: { signal: 'HDMI', level: '1.4', accepts: rasters(formats) } } },
    ...(largest === undefined || diagonalMm === undefined ? {} : { screen: { diagonalMm, widthPx: largest.widthPx, heightPx: largest.heightPx } }),
  };
}

type Raster = NonNullable<NonNullable<NonNullable<Part['ports']>[string]['video']>['accepts']>[number];

/** Formats of one size and kind are one entry with all its rates. */
function rasters(formats: Edid['formats']): Raster[] {
  const found = new Map<string, Raster>();
  for (const { widthPx, heightPx, frameRateHz, interlaced } of formats) {
    const key = `${widthPx} ${heightPx} ${interlaced}`;
    const before = found.get(key);
    found.set(key, { widthPx, heightPx, ratesHz: [...new Set([...(before?.ratesHz ?? []), frameRateHz])], ...(interlaced ? { interlaced } : {}) });
  }
  return [...found.values()];
}
