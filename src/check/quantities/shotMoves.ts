import type { PullGiven } from '../../calc/focus/pull/given.ts';
import { fastestWantedDegPerS } from '../../calc/focus/pull/subject.ts';
import type { Shot } from '../../shoot/schema/day.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import type { ShotSubject } from '../subjects.ts';
import { shotRing } from './ringAngle.ts';

type Keyframes = PullGiven['keyframes'];

/** Where the subject of a shot is when, and how it gets there; `Infinity` for infinity. */
export function shotMoves(asking: Asking, shot: string): Keyframes {
  const path = `shots/${shot}/subject`;
  const stated = (asking.ledger.at(path) ?? []) as NonNullable<Shot['subject']>;
  if (stated.length === 0) throw new NotEntered([{ path, says: 'how far away the subject of the shot is, over time' }]);
  const motion = (asking.ledger.at(`shots/${shot}/motion`) as Shot['motion']) ?? 'smooth';
  return stated.map(({ atS, distanceMm }, at) => {
    const rack = motion === 'rack' && at > 0 && stated[at - 1]?.distanceMm !== distanceMm;
    return { atS, distanceMm: distanceMm === 'infinity' ? Infinity : distanceMm, by: rack ? 'rack' : motion === 'constant' ? 'steady' : 'smooth' };
  });
}

/** The fastest stretch of a shot's pull, at the ring. */
export interface FastestTurn {
  readonly degPerS: number;
  readonly fromMm: number;
  readonly toMm: number;
  readonly turnDeg: number;
  readonly seconds: number;
  readonly rack: boolean;
}

/** `undefined` for a subject that stays where it is. */
export function fastestTurn(asking: Asking, subject: ShotSubject): FastestTurn | undefined {
  return asking.ledger.cell(`fastest turn|${subject.shot}`, () => {
    const keyframes = shotMoves(asking, subject.shot);
    const { angleAt } = shotRing(asking, subject);
    const moves = keyframes.slice(1).flatMap((end, at): FastestTurn[] => {
      const start = keyframes[at];
      if (start === undefined || start.distanceMm === end.distanceMm || end.atS <= start.atS) return [];
      return [{
        degPerS: fastestWantedDegPerS([start, end], angleAt), fromMm: start.distanceMm, toMm: end.distanceMm,
        turnDeg: Math.abs(angleAt(end.distanceMm) - angleAt(start.distanceMm)), seconds: end.atS - start.atS, rack: end.by === 'rack',
      }];
    });
    return moves.toSorted((a, b) => b.degPerS - a.degPerS)[0];
  });
}
