import type { Answer, Mend } from './answer.ts';
import { LARGEST_USE } from './judge.ts';

/** Tried, and it still fails. What was not put into a number is left to who reads it. */
const isShort = ({ use }: Mend): boolean => use !== undefined && use > 1;

/** Cures that do come before those that only help; of these, what helps most first. */
export function inOrder(mends: readonly Mend[]): readonly Mend[] {
  const bounded = mends.map((mend) => (mend.use === undefined || mend.use <= LARGEST_USE ? mend : { ...mend, use: LARGEST_USE }));
  return [...bounded.filter((mend) => !isShort(mend)), ...bounded.filter(isShort).toSorted((a, b) => (a.use ?? 0) - (b.use ?? 0))];
}

/** What to say beside a cure after which it still fails; nothing beside the others. */
export const shortfall = (mend: Mend): string | undefined => (isShort(mend) ? 'helps, not enough alone' : undefined);

/** What to say below several cures none of which does. */
export const noneDoes = ({ mends = [] }: Pick<Answer, 'mends'>): string | undefined => (mends.length > 1 && mends.every(isShort) ? 'None of these is enough alone.' : undefined);
