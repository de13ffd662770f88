import type { Shot } from '../../shoot/schema/day.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';

/** How far away a shot's subject is, mm from the sensor plane. */
export interface ShotDistances {
  readonly nearMm: number;
  readonly farMm: number;
}

/** Nearest and farthest that a shot asks of focus. */
export function shotDistances(asking: Asking, shot: string): ShotDistances {
  const path = `shots/${shot}/subject`;
  const keyframes = (asking.ledger.at(path) ?? []) as NonNullable<Shot['subject']>;
  const close = asking.ledger.at(`shots/${shot}/closeMm`) as number | undefined;
  const all = [...keyframes.map(({ distanceMm }) => (distanceMm === 'infinity' ? Infinity : distanceMm)), ...(close === undefined ? [] : [close])];
  if (all.length === 0) throw new NotEntered([{ path, says: 'how far away the subject of the shot is' }]);
  return { nearMm: Math.min(...all), farMm: Math.max(...all) };
}
