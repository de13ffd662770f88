import { CsvError, parse } from 'csv-parse/sync';
import type { Fault } from '../../faults/Fault.ts';

/** A row and the line of the file it starts in. */
export interface TableRow {
  readonly cells: readonly string[];
  readonly row: number;
}

const SAID: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: 'A double quote is opened here and never closed.',
  CSV_INVALID_CLOSING_QUOTE: 'More text follows a closing double quote.',
  CSV_MAX_RECORD_SIZE: 'A row is too long.',
};

/** The rows of a table; cells are parted by whichever of comma, semicolon and tabulator stands most often in its first row. */
export function readTable(text: string): { readonly rows: readonly TableRow[] } | { readonly fault: Omit<Fault, 'line' | 'column'> & { row: number } } {
  if (/^\s*\{/.test(text)) return { fault: { row: 1, path: '', message: 'This is JSON, not a table.', cure: 'A table has a header row with the columns "name" and "kind".' } };
  if (text.includes('\0')) return { fault: { row: 1, path: '', message: 'This is not a text file.', cure: 'Save the table as CSV in UTF-8.' } };
  try {
    const first = text.replace(/^\s+/, '').split('\n', 1)[0] ?? '';
    const delimiter = [',', ';', '\t'].toSorted((a, b) => first.split(b).length - first.split(a).length)[0] ?? ',';
    const rows = parse(text.replaceAll(/\r\n?/g, '\n'), { bom: true, delimiter, relax_column_count: true, relax_quotes: true, skip_empty_lines: true, skip_records_with_empty_values: true, trim: true, raw: true, info: true }) as unknown as Read[];
    return { rows: rows.map(({ record, raw, info }) => ({ cells: record, row: info.lines - linesIn(raw) + 1 })) };
  } catch (thrown) {
    if (!(thrown instanceof CsvError)) throw thrown;
    const { lines } = thrown as { lines?: number };
    return { fault: { row: lines ?? 1, path: '', message: SAID[thrown.code] ?? 'The table breaks off here.', cure: 'A cell that holds a double quote stands in double quotes, and has it twice.' } };
  }
}

interface Read {
  readonly record: string[];
  readonly raw: string;
  readonly info: { readonly lines: number };
}

/** Lines a row takes up: a quoted cell may hold several. */
const linesIn = (raw: string): number => raw.trim().split('\n').length;
