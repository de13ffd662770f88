import { readLength } from './length.ts';
import type { Unit } from './Unit.ts';
import { unitOfKey } from './unitOfKey.ts';

const AMOUNT = /^([-−]?\d+(?:[.,]\d+)?)\s*(.*)$/;
export const GRAMS: Readonly<Record<string, number>> = { g: 1, kg: 1000, lb: 453.592_37, lbs: 453.592_37, oz: 28.349_523 };

const LBF_IN = 0.112_984_8; // N·m, NIST SP 811, appendix B.8
const KGF_CM = 0.098_066_5; // N·m, NIST SP 811, appendix B.8
/** Torques as they are written, in N·m, without what stands between the two units. */
const TORQUES: Readonly<Record<string, number>> = { nm: 1, ncm: 0.01, lbfin: LBF_IN, lbin: LBF_IN, inlb: LBF_IN, inlbf: LBF_IN, lbfft: 12 * LBF_IN, lbft: 12 * LBF_IN, ftlb: 12 * LBF_IN, ftlbf: 12 * LBF_IN, kgfcm: KGF_CM, kgcm: KGF_CM };

/** What somebody typed with a unit or in quotation marks, as the bare number that a file holds in a unit; `undefined` where it cannot be told. */
export function metricNumber(text: string, unit: Unit): number | undefined {
  const [, digits = '', word = ''] = AMOUNT.exec(text.trim()) ?? [];
  const value = digits === '' ? Number.NaN : Number(digits.replace('−', '-').replace(',', '.'));
  if (!Number.isNaN(value) && (word === '' || word.toLowerCase() === unit.toLowerCase())) return value;
  if (unit === 'mm' || unit === 'm') return lengthIn(text, unit);
  if (unit === 'g') return Object.hasOwn(GRAMS, word.toLowerCase()) ? rounded(value * (GRAMS[word.toLowerCase()] ?? Number.NaN)) : undefined;
  if (unit === 'N·m') return torqueIn(value, word.toLowerCase().replaceAll(/[\s.·*-]/g, ''));
  return unit === '°C' ? celsiusIn(value, word) : undefined;
}

function celsiusIn(value: number, word: string): number | undefined {
  return /^°?\s*f$/i.test(word) ? rounded(((value - 32) * 5) / 9) : /^°?\s*c$/i.test(word) ? value : undefined;
}

function torqueIn(value: number, word: string): number | undefined {
  return Object.hasOwn(TORQUES, word) && !Number.isNaN(value) ? Number((value * (TORQUES[word] ?? 1)).toPrecision(6)) : undefined;
}

function lengthIn(text: string, unit: 'mm' | 'm'): number | undefined {
  const length = readLength(text);
  return length.ok && Number.isFinite(length.value) ? rounded(unit === 'mm' ? length.value : length.value / 1000) : undefined;
}

/** A thousandth of a unit is finer than anybody types; binary fractions leave no tail. */
const rounded = (value: number): number => Math.round(value * 1000) / 1000;

/** What to write under a key in place of a text: "Write 1676.4: this is in mm." Nothing where no number can be told from it. */
export function metricCure(key: string, typed: string): string | undefined {
  const unit = unitOfKey(key);
  const value = metricNumber(typed, unit);
  return value === undefined ? undefined : `Write ${value}${unit === 'ratio' ? ', without quotation marks' : `: it stands in ${unit} here`}.`;
}
