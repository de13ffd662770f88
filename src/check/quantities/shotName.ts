import type { Asking } from '../Asking.ts';
import { nameAt } from '../nameAt.ts';

/** A shot's name within a sentence: names of shots are often sentences themselves. */
export const shotName = ({ ledger }: Asking, { shot }: { readonly shot: string }): string => `“${nameAt(ledger, 'shots', shot)}”`;
