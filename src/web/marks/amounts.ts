import { readLength } from '../../units/length.ts';
import { IMPERIAL, type System, inSystem, printNumber } from '../../units/print.ts';
import type { Unit } from '../../units/Unit.ts';

const LENGTHS: ReadonlySet<Unit> = new Set(['mm', 'm']);

/** The unit an amount is typed in: never kilograms or feet, so that a field keeps its unit while it is edited. */
export function unitTyped(unit: Unit, system: System): string {
  if (unit === 'g') return system === 'imperial' ? 'lb' : 'g';
  if (unit === 'm') return system === 'imperial' ? 'ft' : 'm';
  return unit === 'share' ? '%' : inSystem({ value: 1, unit }, system).unit;
}

/** A value as it stands in its field. */
export function textOf(value: number, unit: Unit, system: System): string {
  return plain(value * factor(unit, system) + offset(unit, system));
}

/** A value typed into a field, in the file's own unit. Lengths may also be typed with a unit, as in 5'6". Nothing where it is not a number. */
export function readTyped(text: string, unit: Unit, system: System): number | undefined {
  const trimmed = text.trim().replace(',', '.').replace('−', '-');
  const value = Number(trimmed);
  if (trimmed !== '' && Number.isFinite(value)) return tidy((value - offset(unit, system)) / factor(unit, system));
  if (!LENGTHS.has(unit)) return undefined;
  const length = readLength(text);
  return length.ok && Number.isFinite(length.value) ? tidy(unit === 'm' ? length.value / 1000 : length.value) : undefined;
}

function factor(unit: Unit, system: System): number {
  if (unit === 'share') return 100;
  if (system === 'metric') return 1;
  return unit === 'm' ? 1 / 0.3048 : (IMPERIAL[unit]?.factor ?? 1);
}

const offset = (unit: Unit, system: System): number => (system === 'imperial' ? (IMPERIAL[unit]?.offset ?? 0) : 0);

/** Rounding of the last bits, so that a value typed in inches does not end in a tail of nines. */
const tidy = (value: number): number => Number(value.toPrecision(9));

function plain(value: number): string {
  const text = Math.abs(value) >= 1e7 || (value !== 0 && Math.abs(value) < 1e-4) ? String(value) : value.toPrecision(6);
  return text.includes('e') ? String(Number(text)) : text.replace(/(\.\d*?)0+$/, '$1').replace(/\.$/, '');
}

/** Low to high, with as many digits as their distance deserves. */
export function boundsText(low: number, high: number, unit: Unit, system: System): string {
  const shown = (value: number) => printNumber(value * factor(unit, system) + offset(unit, system));
  return low === high ? '' : `${shown(low)} to ${shown(high)}`;
}
