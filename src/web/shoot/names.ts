import type { Shoot } from '../../shoot/schema/shoot.ts';

/** A person as others call them. */
export const personName = (crew: Shoot['crew'], id: string): string => crew?.[id]?.name ?? crew?.[id]?.role ?? id;

/** A viewer by who they are and what they do. */
export const viewerName = ({ who, job }: { readonly who: string; readonly job: string }, crew: Shoot['crew']): string => `${personName(crew, who)} (${job})`;
