import { parse } from 'csv-parse/sync';
import type { Fault } from '../../faults/Fault.ts';
import { nearestName } from '../../faults/nearestName.ts';
import { schemaFaults } from '../../faults/schemaFaults.ts';
import { KINDS, type Part, part as partSchema } from '../schema/part.ts';
import { typicalPart } from '../typical/typicalParts.ts';
import { cellValue } from './cellValue.ts';
import { type Column, columnsOf } from './columns.ts';

/** A fault in a table: row 1 is the header. */
export interface CellFault extends Omit<Fault, 'line' | 'column'> {
  readonly row: number;
  readonly column?: string;
}

export interface Imported {
  /** Parts by id, of the rows without a fault. */
  readonly parts: Readonly<Record<string, Part>>;
  readonly faults: readonly CellFault[];
}

/**
 * Reads a kit from a table with a header row. Columns: `id` (else made of the name), `name`, `kind`, `typical` (a class whose
 * figures fill what the row leaves empty), and any figure by its path in a part, such as `screen/diagonalMm`. One bad row
 * loses no other.
 */
export function importKitCsv(text: string, taken: Iterable<string> = []): Imported {
  const table = rowsOf(text);
  if ('fault' in table) return { parts: {}, faults: [table.fault] };
  const [header = [], ...rows] = table.rows;
  const { columns, faults } = columnsFor(header);
  const ids = new Set(taken);
  const parts: Record<string, Part> = {};
  rows.forEach((cells, at) => {
    const row = at + 2;
    const read = readRow(cells, columns, row);
    if (read.faults.length > 0) {
      faults.push(...read.faults);
      return;
    }
    const id = read.id ?? idFrom(read.part.name, ids);
    if (ids.has(id)) {
      faults.push({ row, column: 'id', path: 'id', message: `"${id}" is there already.`, cure: 'Give the part another id.' });
      return;
    }
    ids.add(id);
    parts[id] = read.part;
  });
  return { parts, faults };
}

function rowsOf(text: string): { rows: string[][] } | { fault: CellFault } {
  try {
    const delimiter = [',', ';', '\t'].toSorted((a, b) => countOf(text, b) - countOf(text, a))[0] ?? ',';
    return { rows: parse(text, { bom: true, delimiter, relax_column_count: true, relax_quotes: true, skip_empty_lines: true, trim: true }) };
  } catch (thrown) {
    const { lines, message } = thrown as { lines?: number; message: string };
    return { fault: { row: lines ?? 1, path: '', message: `The table breaks off here: ${message}`, cure: 'Is a double quote left open?' } };
  }
}

const countOf = (text: string, character: string): number => (text.split('\n', 1)[0] ?? '').split(character).length;

function columnsFor(header: readonly string[]): { columns: (Column | undefined)[]; faults: CellFault[] } {
  const known = columnsOf();
  const faults: CellFault[] = [];
  const columns = header.map((title, at) => {
    const path = title.trim().replaceAll('.', '/');
    const column = known.get(path);
    if (column !== undefined) {
      if (header.findIndex((other) => other.trim().replaceAll('.', '/') === path) < at) faults.push({ row: 1, column: title, path, message: `The column "${title}" stands twice.` });
      return column;
    }
    const near = nearestName(path, known.keys());
    faults.push({ row: 1, column: title, path, message: `There is no column "${title}"; it was left out.`, ...(near === undefined ? {} : { cure: `Did you mean "${near}"?` }) });
    return undefined;
  });
  if (!header.some((title) => title.trim() === 'name')) faults.push({ row: 1, path: 'name', message: 'The header row has no column "name".', cure: 'Each part needs a name and a kind.' });
  return { columns, faults };
}

interface Row {
  readonly id: string | undefined;
  readonly part: Part;
  readonly faults: CellFault[];
}

function readRow(cells: readonly string[], columns: readonly (Column | undefined)[], row: number): Row {
  const faults: CellFault[] = [];
  const entered: [Column, unknown][] = [];
  columns.forEach((column, at) => {
    const text = cells[at]?.trim() ?? '';
    if (column === undefined || text === '') return;
    const value = cellValue(text, column);
    if (value.ok) entered.push([column, value.value]);
    else faults.push(...value.faults.map((fault) => Object.assign({ row, column: column.path }, fault)));
  });
  const word = (path: string) => entered.find(([column]) => column.path === path)?.[1] as string | undefined;
  const typical = word('typical');
  const base = typical === undefined ? {} : typicalPart(typical);
  if (base === undefined) faults.push({ row, column: 'typical', path: 'typical', message: `There is no typical class "${typical}".` });
  const part = structuredClone(base ?? {}) as Record<string, unknown>;
  for (const [{ path }, value] of entered) if (path !== 'id') setAt(part, path, value);
  const checked = partSchema.safeParse(part);
  if (!checked.success) faults.push(...schemaFaults(checked.error, part, partSchema).map((fault) => Object.assign({ row, column: fault.path }, kindCure(fault))));
  return { id: word('id'), part: part as unknown as Part, faults };
}

function kindCure(fault: Fault): Fault {
  return fault.path === 'kind' ? { ...fault, message: fault.message.slice(0, 200), cure: fault.cure ?? `Kinds: ${KINDS.join(', ')}.` } : fault;
}

function setAt(target: Record<string, unknown>, path: string, value: unknown): void {
  const keys = path.split('/');
  let holder = target;
  for (const key of keys.slice(0, -1)) holder = (holder[key] ??= {}) as Record<string, unknown>;
  holder[keys.at(-1) ?? ''] = value;
}

function idFrom(name: string, taken: ReadonlySet<string>): string {
  const stem = name.normalize('NFKD').replaceAll(/[\u0300-\u036F]/g, '').toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-+|-+$/g, '').slice(0, 56);
  const base = stem === '' ? 'part' : stem;
  for (let count = 1; ; count += 1) {
    const id = count === 1 ? base : `${base}-${count}`;
    if (!taken.has(id)) return id;
  }
}
