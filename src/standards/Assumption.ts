import type { Unit } from '../units/Unit.ts';

/** A default the program falls back on where a shoot states nothing. It is listed in every answer that rests on it, and a shoot can replace it under `assumptions`. */
export interface Assumption {
  /** Its path under `assumptions`: room and name. */
  readonly key: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: Unit;
  /** Something is divided by it, so that no shoot can state it as nothing. */
  readonly divides?: true;
  /** What it is, for people. */
  readonly says: string;
  /** Where it comes from: a published source, "common practice" or "estimate". */
  readonly source: string;
}

/** Makes the assumptions of one room; the key of each is its room and name. */
export function assumptions<const Name extends string>(room: string, table: Readonly<Record<Name, Omit<Assumption, 'key'>>>): Readonly<Record<Name, Assumption>> {
  return Object.fromEntries(Object.entries<Omit<Assumption, 'key'>>(table).map(([name, one]) => [name, { key: `${room}.${name}`, ...one }])) as Record<Name, Assumption>;
}
