import type { Basis } from '../../shoot/schema/basics.ts';

/** Where a number may come from, ever less sure. Listed here so that the page need not load the schema. */
export const BASES = ['measured', 'sheet', 'estimate', 'typical'] as const satisfies readonly Basis[];
