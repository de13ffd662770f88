import type { Fault } from '../../faults/Fault.ts';
import { nearestName } from '../../faults/nearestName.ts';
import { schemaFaults } from '../../faults/schemaFaults.ts';
import { absurdities } from '../absurdities.ts';
import { id as idSchema } from '../schema/basics.ts';
import { KINDS, type Part, part as partSchema } from '../schema/part.ts';
import { typicalPart } from '../typical/typicalParts.ts';
import { nearClass } from '../unknownClasses.ts';
import { cellValue } from './cellValue.ts';
import { type Column, columnsOf } from './columns.ts';
import { Ids } from './Ids.ts';
import { readTable } from './readTable.ts';

/** A fault in a table. `row` is the line of the file in which the row starts. */
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
  const table = readTable(text);
  if ('fault' in table) return { parts: {}, faults: [table.fault] };
  const [header, ...rows] = table.rows;
  const { columns, faults } = columnsFor(header?.cells ?? []);
  if (!columns.some((column) => column?.path === 'name')) return { parts: {}, faults: [...faults, { row: 1, path: 'name', message: 'The header row has no column "name".', cure: 'Each part needs a name and a kind.' }] };
  if (rows.length === 0) return { parts: {}, faults: [...faults, { row: 1, path: '', message: 'There is no row below the header.' }] };
  const ids = new Ids(taken);
  const parts: [string, Part][] = [];
  for (const { cells, row } of rows) {
    const read = readRow(cells, columns, row);
    const id = read.faults.length > 0 ? '' : (read.id ?? ids.madeOf(read.part.name));
    const found = read.faults.length > 0 ? read.faults : idFaults(id, ids, row);
    faults.push(...found);
    if (found.length > 0) continue;
    ids.add(id);
    parts.push([id, read.part]);
  }
  return { parts: Object.fromEntries(parts), faults };
}

function idFaults(id: string, ids: Ids, row: number): CellFault[] {
  if (ids.has(id)) return [{ row, column: 'id', path: 'id', message: `"${id}" is there already.`, cure: 'Give the part another id.' }];
  const read = idSchema.safeParse(id);
  return read.success ? [] : [{ row, column: 'id', path: 'id', message: `"${id.slice(0, 80)}" cannot be an id: ${read.error.issues[0]?.message ?? 'it is not allowed'}.` }];
}

function columnsFor(header: readonly string[]): { columns: (Column | undefined)[]; faults: CellFault[] } {
  const known = columnsOf();
  const faults: CellFault[] = [];
  const columns = header.map((title, at) => {
    const path = title.trim().replaceAll('.', '/');
    const column = known.get(path);
    if (title.trim() === '') return undefined;
    if (column !== undefined) {
      if (header.findIndex((other) => other.trim().replaceAll('.', '/') === path) === at) return column;
      faults.push({ row: 1, column: title, path, message: `The column "${title}" stands twice; the first was taken.` });
      return undefined;
    }
    const near = nearestName(path, known.keys());
    faults.push({ row: 1, column: title, path, message: `There is no column "${title}"; it was left out.`, ...(near === undefined ? {} : { cure: `Did you mean "${near}"?` }) });
    return undefined;
  });
  return { columns, faults };
}

interface Row {
  readonly id: string | undefined;
  readonly part: Part;
  readonly faults: CellFault[];
}

function readRow(cells: readonly string[], columns: readonly (Column | undefined)[], row: number): Row {
  const faults: CellFault[] = [];
  const over = cells.slice(columns.length).find((cell) => cell.trim() !== '');
  if (over !== undefined) faults.push({ row, path: '', message: `There is "${over.slice(0, 40)}" beyond the last column.`, cure: 'A cell that holds a comma stands in double quotes.' });
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
  if (base === undefined) return { id: undefined, part: {} as Part, faults: [...faults, noTypical(typical ?? '', word('kind'), row)] };
  const part = structuredClone(base) as Record<string, unknown>;
  for (const [{ path }, value] of entered) if (path !== 'id') setAt(part, path, value);
  const checked = partSchema.safeParse(part);
  const wrong = checked.success ? absurdities(part) : schemaFaults(checked.error, part, partSchema);
  faults.push(...wrong.map((fault) => Object.assign({ row, column: fault.path }, kindCure(fault))));
  return { id: word('id'), part: part as unknown as Part, faults };
}

function kindCure(fault: Fault): Fault {
  if (fault.path !== 'kind') return fault;
  return { ...fault, message: fault.message.replace(/; allowed: .*/, '; it must be a kind of part.'), cure: fault.cure ?? `Kinds: ${KINDS.join(', ')}.` };
}

function noTypical(wanted: string, kind: string | undefined, row: number): CellFault {
  return { row, column: 'typical', path: 'typical', message: `There is no typical class "${wanted.slice(0, 60)}".`, ...nearClass(wanted, kind) };
}

function setAt(target: Record<string, unknown>, path: string, value: unknown): void {
  const keys = path.split('/');
  let holder = target;
  for (const key of keys.slice(0, -1)) holder = (holder[key] ??= {}) as Record<string, unknown>;
  holder[keys.at(-1) ?? ''] = value;
}
