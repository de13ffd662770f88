import type { Figure } from '../shoot/ledger/figures.ts';
import { printNumber } from '../units/print.ts';

const WORDS: Record<Figure['basis'], string> = { measured: 'measured', sheet: 'sheet', estimate: 'estimate', typical: 'typical', assumed: 'assumed' };

/** Where a figure comes from and how sure it is, for a side of an answer: "(estimate ± 0.05)". */
export function origin(figure: Figure): string {
  const doubt = (figure.high - figure.low) / 2;
  const sure = figure.basis === 'measured' || figure.basis === 'sheet';
  return sure || doubt === 0 ? `(${WORDS[figure.basis]})` : `(${WORDS[figure.basis]} ± ${printNumber(doubt, 2)})`;
}
