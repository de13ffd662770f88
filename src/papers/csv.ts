/** Rows as CSV: UTF-8 with a mark so that table programs see it, CRLF, quotes where needed (RFC 4180). */
export function writeCsv(head: readonly string[], rows: readonly (readonly (string | number | undefined)[])[]): string {
  return `\uFEFF${[head, ...rows].map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`;
}

/** A text that a table program would run as a formula is given a leading apostrophe. */
function cell(value: string | number | undefined): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
