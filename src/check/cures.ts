import type { Answer, Mend } from './answer.ts';

/** Tried, and it still fails. What was not put into a number is left to who reads it. */
const isShort = ({ use }: Mend): boolean => use !== undefined && use > 1;

/** Cures that do come before those that only help; of these, what helps most first. */
export const inOrder = (mends: readonly Mend[]): readonly Mend[] =>
  mends.some(isShort) ? [...mends.filter((mend) => !isShort(mend)), ...mends.filter(isShort).toSorted((a, b) => (a.use ?? 0) - (b.use ?? 0))] : mends;

/** What to say beside a cure after which it still fails; nothing beside the others. */
export const shortfall = (mend: Mend): string | undefined => (isShort(mend) ? 'helps, not enough alone' : undefined);

/** What to say below several cures none of which does. */
export const noneDoes = ({ mends = [] }: Pick<Answer, 'mends'>): string | undefined => (mends.length > 1 && mends.every(isShort) ? 'None of these is enough alone.' : undefined);
