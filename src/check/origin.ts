import type { Figure } from '../shoot/ledger/figures.ts';
import { inSystem, printNumber } from '../units/print.ts';

const WORDS: Readonly<Record<Figure['basis'], string>> = { measured: 'measured', sheet: 'sheet', estimate: 'estimate', typical: 'typical', assumed: 'assumed' };

/** Bounds whose sides differ by more than this share of the longer one are told as they are: "±" would say what is not so. */
const EVEN = 0.1;

/** Where a figure comes from and how sure it is, for a side of an answer: "(estimate ± 0.05)", or "(assumed, 15 to 80)" where it may be out by more one way. */
export function origin({ value, low, high, unit, basis }: Pick<Figure, 'value' | 'low' | 'high' | 'unit' | 'basis'>): string {
  const sure = basis === 'measured' || basis === 'sheet' || low === high;
  if (sure) return `(${WORDS[basis]})`;
  const [below, above] = [value - low, high - value];
  const { scale, sign } = shownAs(value, unit);
  const print = (one: number): string => printNumber(one * scale, 2);
  const uneven = Math.abs(above - below) > EVEN * Math.max(above, below);
  return uneven ? `(${WORDS[basis]}, ${print(low)} to ${print(high)}${sign})` : `(${WORDS[basis]} ± ${print((high - low) / 2)}${sign})`;
}

/** Bounds read like the amount they stand beside; a unit only where the amount is shown in another than its own. */
function shownAs(value: number, unit: Figure['unit']): { scale: number; sign: string } {
  if (unit === 'share') return { scale: 100, sign: ' %' };
  const shown = inSystem({ value, unit }, 'metric');
  return shown.unit === 'kg' ? { scale: 1e-3, sign: ' kg' } : { scale: 1, sign: '' };
}
