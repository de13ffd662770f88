import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import { focus } from '../../standards/assumptions/focus.ts';
import { printNumber } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import { describeFigure } from '../describeFigure.ts';
import { NotEntered } from '../NotEntered.ts';
import type { Bounded } from './Bounded.ts';

/** Torque that turns a focus ring at a temperature, N·m. */
export interface RingTorque extends Bounded {
  /** What it is and where it comes from: "0.72 at −2 °C (between 0.46 warm, measured, and 0.76 at −5 °C, measured)". */
  readonly says: string;
  /** It was measured at about this temperature, or between two that were measured. */
  readonly measured: boolean;
}

/**
 * The torque at a temperature. Between a warm and a cold measurement it grows by an even share with each degree, as the
 * viscosity of grease does over a short span; beyond them by an assumed share for ten degrees, with wide bounds.
 */
export function ringTorque(asking: Asking, { part }: SetupPiece, { value: atC }: { readonly value: number }): RingTorque {
  const warm = part.figure('focus/ringTorqueNm');
  const cold = part.figure('focus/coldTorqueNm');
  const coldAtC = part.figure('focus/coldAtC');
  if (warm === undefined && cold === undefined) throw new NotEntered([describeFigure(part, 'focus/ringTorqueNm')]);
  const warmAtC = asking.assume(focus.warmAtC).value;
  const isCold = cold !== undefined && coldAtC !== undefined && coldAtC.value < warmAtC;
  if (isCold && (warm === undefined || atC <= coldAtC.value)) return grown(asking, cold, { fromC: coldAtC.value, atC, word: `at ${degrees(coldAtC.value)}` });
  if (isCold && warm !== undefined && atC < warmAtC) return between(warm, cold, { warmAtC, coldAtC: coldAtC.value, atC });
  if (warm === undefined && cold !== undefined) return { ...cold, says: `${shown(cold)} cold, at a temperature not entered (${cold.basis})`, measured: cold.basis === 'measured' };
  return grown(asking, warm as Figure, { fromC: warmAtC, atC, word: 'warm' });
}

function between(warm: Figure, cold: Figure, { warmAtC, coldAtC, atC }: { warmAtC: number; coldAtC: number; atC: number }): RingTorque {
  const share = (warmAtC - atC) / (warmAtC - coldAtC);
  const mix = (key: 'value' | 'low' | 'high') => Math.max(warm[key], 1e-9) ** (1 - share) * Math.max(cold[key], 1e-9) ** share;
  const says = `${printNumber(mix('value'))} at ${degrees(atC)} (between ${shown(warm)} warm, ${warm.basis}, and ${shown(cold)} at ${degrees(coldAtC)}, ${cold.basis})`;
  return { value: mix('value'), low: mix('low'), high: mix('high'), says, measured: warm.basis === 'measured' && cold.basis === 'measured' };
}

/** From one measurement: as it is where it is no colder, else more by the assumed share. */
function grown(asking: Asking, from: Figure, { fromC, atC, word }: { fromC: number; atC: number; word: string }): RingTorque {
  if (atC >= fromC) return { value: from.value, low: from.low, high: from.high, says: `${shown(from)} ${word} (${from.basis})`, measured: from.basis === 'measured' };
  const rise = asking.assume(focus.coldRise);
  const tens = (fromC - atC) / 10;
  return {
    value: from.value * rise.value ** tens,
    low: from.low * rise.low ** tens,
    high: from.high * rise.high ** tens,
    says: `${printNumber(from.value * rise.value ** tens)} at ${degrees(atC)} (${shown(from)} ${word}, ${from.basis}, × ${printNumber(rise.value ** tens)}: an estimate until measured cold)`,
    measured: false,
  };
}

const shown = (figure: Figure): string => printNumber(figure.value);
const degrees = (celsius: number): string => `${printNumber(celsius)} °C`;
