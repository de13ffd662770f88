import type { Part } from '../schema/part.ts';

/** A generic class of part: its figures are what such things usually have, sure to a third or so, enough for a first answer. */
export type TypicalPart = Omit<Part, 'basis' | 'typical'>;

/** The classes of one room, by their id. */
export type TypicalRoom = Readonly<Record<string, TypicalPart>>;

/** A room of classes made by one rule from a list of rows. */
export function roomOf<Row>(rows: readonly Row[], make: (row: Row) => readonly [id: string, part: TypicalPart]): TypicalRoom {
  return Object.fromEntries(rows.map((row) => plain(make(row))));
}

/** Products of two figures, such as 1.35 × 28, without the tail that binary fractions leave. */
export const plain = <T>(of: T): T => JSON.parse(JSON.stringify(of, (_key, value: unknown) => (typeof value === 'number' ? Math.round(value * 1000) / 1000 : value))) as T;
