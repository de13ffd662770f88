import type { KeyboardEvent } from 'react';

/** Arrow keys walk up and down the rows; Home and End go to the ends. */
export function walkRows(event: KeyboardEvent<HTMLElement>): void {
  const { target, key } = event;
  if (!(target instanceof HTMLElement) || !target.matches('[data-row]')) return;
  const rows = [...event.currentTarget.querySelectorAll<HTMLElement>('[data-row]')].filter((row) => row.offsetParent !== null);
  const at = rows.indexOf(target);
  const to: Readonly<Record<string, number>> = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: rows.length - 1 };
  const next = to[key] === undefined ? undefined : rows[to[key]];
  if (next === undefined) return;
  event.preventDefault();
  next.focus();
}
