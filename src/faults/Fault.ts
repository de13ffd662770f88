/**
 * A fault is what is wrong with something a user gave us: a value, never an exception. It says where, what was found, what
 * would be right and, where one can be guessed, the cure. Rendering to text happens late, in `faultText`.
 */
export interface Fault {
  /** Where, as names from the top joined by `/`, for example `kit/parts/near-lens/lens/focalLengthMm`; empty for the whole. */
  readonly path: string;
  /** What is wrong, one sentence without the place. */
  readonly message: string;
  /** What to do about it, where that is known. */
  readonly cure?: string;
  /** Line and column in the text, counted from 1, where the fault is in the text itself. */
  readonly line?: number;
  readonly column?: number;
  /** A warning does not stop the work. An unknown key is one where files are read, and a fault where a calculator is asked. */
  readonly severity?: 'warning' | 'unknown key';
}

/** A result, or all the faults that kept it from being one. Warnings may accompany a result. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T; readonly warnings: readonly Fault[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** One fault as a line of text: place, message, cure. */
export function faultText(fault: Fault): string {
  const place = fault.line === undefined ? fault.path : `line ${fault.line}, column ${fault.column ?? 1}`;
  const where = place === '' ? '' : `${place}: `;
  return `${where}${fault.message}${fault.cure === undefined ? '' : ` ${fault.cure}`}`;
}
