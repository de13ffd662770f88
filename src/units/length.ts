import type { Outcome } from '../faults/Fault.ts';
import { THIN_SPACE } from './thinSpace.ts';

const MM_PER_INCH = 25.4;
const MM_PER_FOOT = 304.8;
const MM_PER: Readonly<Record<string, number>> = {
  mm: 1, cm: 10, m: 1000, in: MM_PER_INCH, '"': MM_PER_INCH, '″': MM_PER_INCH, '”': MM_PER_INCH, inch: MM_PER_INCH, inches: MM_PER_INCH,
  ft: MM_PER_FOOT, "'": MM_PER_FOOT, '′': MM_PER_FOOT, '’': MM_PER_FOOT, foot: MM_PER_FOOT, feet: MM_PER_FOOT,
};
const TERM = /(\d+(?:[.,]\d+)?)(?:\s+(\d+)\/(\d+)|\/(\d+))?\s*(mm|cm|m|inches|inch|in|feet|foot|ft|"|″|”|'|′|’)/y;

/**
 * Reads a length as people type it, in mm: `5'6"`, `5'6 1/2"`, `5 ft 6 in`, `1.68 m`, `168 cm`, `66in`; `infinity`, `inf` and
 * `∞` give `Infinity`. A bare number is refused: nobody can tell feet from metres.
 */
export function readLength(text: string): Outcome<number> {
  const trimmed = text.trim().toLowerCase();
  if (/^(infinity|inf|∞)$/.test(trimmed)) return { ok: true, value: Infinity, warnings: [] };
  let total = 0;
  let at = 0;
  let lastUnit = Infinity;
  while (at < trimmed.length) {
    TERM.lastIndex = at;
    const term = TERM.exec(trimmed);
    if (term === null) return refused(text);
    const unit = MM_PER[term[5] ?? ''] ?? Number.NaN;
    if (unit >= lastUnit) return refused(text);
    total += numberOf(term) * unit;
    lastUnit = unit;
    at = TERM.lastIndex;
    while (trimmed[at] === ' ' || trimmed[at] === '-') at += 1;
  }
  return lastUnit === Infinity || !Number.isFinite(total) ? refused(text) : { ok: true, value: total, warnings: [] };
}

function numberOf([, whole = '0', numerator, denominator, lone]: RegExpExecArray): number {
  const value = Number(whole.replace(',', '.'));
  if (lone !== undefined) return value / Number(lone);
  return numerator === undefined ? value : value + Number(numerator) / Number(denominator);
}

function refused(text: string): Outcome<number> {
  const shown = text.length > 40 ? `${text.slice(0, 37)}…` : text;
  const cure = /^\s*[\d.,]+\s*$/.test(text) ? 'Add the unit' : 'Write it';
  return { ok: false, faults: [{ path: '', message: `"${shown}" is not a length.`, cure: `${cure}, as in 5'6", 1.68 m or 168 cm.` }] };
}

/** A distance as a tape shows it: `1.68 m`, or `5'6"` to the nearest half inch under ten feet and the nearest inch beyond. */
export function printDistance(mm: number, system: 'metric' | 'imperial'): string {
  if (mm === Infinity) return 'infinity';
  if (system === 'metric') return `${(mm / 1000).toFixed(mm < 10_000 ? 2 : 1)}${THIN_SPACE}m`;
  const step = Math.abs(mm) < 10 * MM_PER_FOOT ? 2 : 1;
  const inches = Math.round((Math.abs(mm) / MM_PER_INCH) * step) / step;
  const feet = Math.floor(inches / 12);
  const rest = inches - feet * 12;
  const restText = rest % 1 === 0 ? String(rest) : `${rest === 0.5 ? '' : `${Math.floor(rest)} `}1/2`;
  return `${mm < 0 ? '-' : ''}${feet === 0 ? '' : `${feet}'`}${restText}"`;
}
