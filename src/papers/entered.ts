import { NoAnswer } from '../calc/calculator.ts';
import { NotEntered } from '../check/NotEntered.ts';

/** A value, or nothing where it rests on what is not entered or cannot be worked out: the paper then leaves room for a hand. */
export function ifEntered<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (thrown) {
    if (thrown instanceof NotEntered || thrown instanceof NoAnswer) return undefined;
    throw thrown;
  }
}

/** A value, or in words why there is none. */
export function enteredOrWhy<T>(read: () => T): { readonly value: T } | { readonly why: string } {
  try {
    return { value: read() };
  } catch (thrown) {
    if (thrown instanceof NotEntered) return { why: `Not entered: ${thrown.missing.map(({ says }) => says).join('; ')}.` };
    if (thrown instanceof NoAnswer) return { why: thrown.message };
    throw thrown;
  }
}
