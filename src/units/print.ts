import { printDistance } from './length.ts';
import { THIN_SPACE } from './thinSpace.ts';
import type { Unit } from './Unit.ts';

export type System = 'metric' | 'imperial';

/** A number with its unit. */
export interface Amount {
  readonly value: number;
  readonly unit: Unit;
}

const HIDDEN: ReadonlySet<Unit> = new Set(['ratio', 'share', 'count']);
const SHOWN: Partial<Record<Unit, string>> = { deg: '°', 'deg/s': '°/s', arcmin: '′', 'module mm': 'mm module', ohm: 'Ω' };
const WHOLE: ReadonlySet<Unit> = new Set(['px', 'teeth', 'count', 'bit', 'frames']);

/** Less than this is what rounding left over. */
const NOTHING: Partial<Record<Unit, number>> = { mm: 1e-6, m: 1e-9, deg: 1e-6, g: 1e-6, h: 1e-6, min: 1e-6, s: 1e-6, ms: 1e-6, N: 1e-9, 'N·m': 1e-9 };

/** How a unit is shown in the imperial system: so many of the other one, from where its zero lies. */
export interface Imperial {
  readonly unit: string;
  readonly factor: number;
  readonly offset?: number;
}

// Exact by definition: 25.4 mm the inch, 453.59237 g the pound (international yard and pound, 1959), 9.80665 m/s² (CGPM 1901).
const LBF_PER_N = 1 / 4.448_221_615_260_5;
const IN_PER_M = 1000 / 25.4;

/** Torque always in pound-force inches, so that what is needed and what there is can be compared. What is not here is shown as it is. */
export const IMPERIAL: Partial<Record<Unit, Imperial>> = {
  mm: { unit: 'in', factor: 1 / 25.4 }, g: { unit: 'lb', factor: 1 / 453.592_37 }, '°C': { unit: '°F', factor: 1.8, offset: 32 }, 'm/s': { unit: 'ft/s', factor: 1 / 0.3048 },
  N: { unit: 'lbf', factor: LBF_PER_N }, 'N·m': { unit: 'lbf·in', factor: LBF_PER_N * IN_PER_M }, 'N·mm': { unit: 'lbf·in', factor: LBF_PER_N / 25.4 },
  'N/mm': { unit: 'lbf/in', factor: LBF_PER_N * 25.4 }, 'N·m/rad': { unit: 'lbf·in/rad', factor: LBF_PER_N * IN_PER_M },
};

/** Converts what the imperial system shows otherwise; the rest stays as it is. */
export function inSystem({ value, unit }: Amount, system: System): { value: number; unit: string } {
  const imperial = system === 'imperial' ? IMPERIAL[unit] : undefined;
  if (imperial !== undefined) return { value: value * imperial.factor + (imperial.offset ?? 0), unit: imperial.unit };
  if (unit === 'g' && Math.abs(value) >= 1000) return { value: value / 1000, unit: 'kg' };
  return { value, unit: SHOWN[unit] ?? (HIDDEN.has(unit) ? '' : unit) };
}

/** An amount in words for people: three significant digits, whole pixels and teeth, long distances as a tape shows them. */
export function printAmount(given: Amount, system: System = 'metric'): string {
  const amount = Math.abs(given.value) < (NOTHING[given.unit] ?? 0) ? { ...given, value: 0 } : given;
  if (amount.unit === 'm') return printDistance(amount.value * 1000, system);
  if (amount.unit === 'T' || amount.unit === 'f') return `${amount.unit === 'T' ? 'T' : 'f/'}${printNumber(amount.value)}`;
  if (amount.unit === 'share') return Number.isFinite(amount.value) ? `${printNumber(amount.value * 100)}${THIN_SPACE}%` : 'all';
  const { value, unit } = inSystem(amount, system);
  const number = WHOLE.has(amount.unit) && Math.abs(value - Math.round(value)) < 1e-6 ? grouped(Math.round(value).toString()) : printNumber(value);
  if (unit === '') return number;
  return unit === '°' || unit === '′' ? `${number}${unit}` : `${number}${THIN_SPACE}${unit}`;
}

/** Three significant digits, no exponent between a thousandth and ten million, a thin space between thousands from 10 000 on. */
export function printNumber(value: number, digits = 3): string {
  if (value === Infinity) return 'infinity';
  if (value === -Infinity) return 'minus infinity';
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size >= 1e7 || size < 1e-4) return value.toExponential(digits - 1);
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(size)));
  const text = value.toFixed(Math.min(decimals, 8));
  return grouped(text.includes('.') ? text.replace(/\.?0+$/, '') : text);
}

function grouped(text: string): string {
  const [whole = '', decimals] = text.replace('-', '−').split('.');
  const spaced = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE) : whole;
  return decimals === undefined ? spaced : `${spaced}.${decimals}`;
}
