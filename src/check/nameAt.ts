import type { Ledger } from '../shoot/ledger/Ledger.ts';

/** The name for people of a shot, glass, setup, build or day. */
export const nameAt = (ledger: Ledger, kind: 'shots' | 'glasses' | 'setups' | 'builds' | 'days', id: string): string =>
  (ledger.at(`${kind}/${id}/name`) as string | undefined) ?? id;

/** A shot's name as it stands in a sentence: it may hold commas and verbs of its own. */
export const shotName = (ledger: Ledger, id: string): string => `“${nameAt(ledger, 'shots', id)}”`;
