import type { Outcome } from '../../faults/Fault.ts';
import { readLength } from '../../units/length.ts';
import { GRAMS } from '../../units/metricNumber.ts';
import type { Column } from './columns.ts';

const FIGURE = /^([-−]?[\d.]+)\s*(?:(?:±|\+\/-)\s*([\d.]+)\s*(%)?)?\s*(measured|sheet|estimate|typical)?$/i;

const MASS = /^([\d.]+)\s*(kg|g|lbs?|oz)$/;

/** The value of a table's cell for its column: `0.35 ± 0.05 measured`, `5'6"` where the column is in mm, `yes`, `1.33; 2`. */
export function cellValue(text: string, column: Column): Outcome<unknown> {
  switch (column.holds) {
    case 'text':
      return fine(text);
    case 'yes or no':
      if (/^(yes|y|true|1|x)$/i.test(text)) return fine(true);
      return /^(no|n|false|0)$/i.test(text) ? fine(false) : refuse(column, text, 'Write yes or no.');
    case 'numbers': {
      const numbers = text.split(/[;\s]+/).map(numberOf);
      return numbers.some(Number.isNaN) ? refuse(column, text, 'Write numbers with semicolons between them.') : fine(numbers);
    }
    default:
      return numeric(text, column);
  }
}

function numeric(text: string, column: Column): Outcome<unknown> {
  const mass = column.unit === 'g' ? MASS.exec(withPoint(text)) : null;
  if (mass !== null) return fine(Number(mass[1]) * (GRAMS[mass[2] ?? ''] ?? Number.NaN));
  const typed = FIGURE.exec(withPoint(text));
  return typed === null ? typedLength(text, column) : typedFigure(typed, text, column);
}

function typedLength(text: string, column: Column): Outcome<unknown> {
  if (column.unit !== 'mm') return refuse(column, text, 'Write a number, or 0.35 ± 0.05 measured.');
  const length = readLength(text);
  return length.ok && Number.isFinite(length.value) ? fine(length.value) : refuse(column, text, 'Write mm, or a length such as 5\'6" or 16.8 cm.');
}

function typedFigure([, number = '', spread, percent, basis]: RegExpExecArray, text: string, column: Column): Outcome<unknown> {
  const value = numberOf(number);
  if (!Number.isFinite(value)) return refuse(column, text, 'Write a number.');
  if (spread === undefined && basis === undefined) return fine(value);
  if (column.holds !== 'figure') return refuse(column, text, 'This is a plain number without bounds.');
  const doubt = spread === undefined ? {} : percent === undefined ? { plusMinus: Number(spread) } : { within: `${spread}%` };
  return fine({ value, ...doubt, ...(basis === undefined ? {} : { basis: basis.toLowerCase() }) });
}

/** A comma between digits is a decimal comma where there is no point. */
const withPoint = (text: string): string => (text.includes('.') ? text : text.replace(/(\d),(\d)/, '$1.$2'));
const numberOf = (text: string): number => (text === '' ? Number.NaN : Number(withPoint(text).replace('−', '-')));

const fine = (value: unknown): Outcome<unknown> => ({ ok: true, value, warnings: [] });
const refuse = ({ path, unit }: Column, text: string, cure: string): Outcome<never> => ({
  ok: false,
  faults: [{ path, message: `"${text.slice(0, 40)}" is no value for ${path}${unit === '' ? '' : ` in ${unit}`}.`, cure }],
});
