import { NoAnswer } from '../../calc/calculator.ts';
import { NotEntered } from '../../check/NotEntered.ts';

/** Something to draw, or why it cannot be drawn. */
export type View<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly says: string };

/** What `look` sees; where a figure is missing or nothing comes out, the words for that. */
export function viewOf<T>(look: () => T): View<T> {
  try {
    return { ok: true, value: look() };
  } catch (thrown) {
    if (thrown instanceof NotEntered) return { ok: false, says: `Not entered yet: ${thrown.missing.map(({ says }) => says).join('; ')}.` };
    if (thrown instanceof NoAnswer) return { ok: false, says: thrown.message };
    return { ok: false, says: `This could not be worked out: ${thrown instanceof Error ? thrown.message : String(thrown)}` };
  }
}
