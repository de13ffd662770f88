import { NoAnswer } from '../../calc/calculator.ts';
import { closeUp as seenThrough } from '../../calc/optics/closeUp.ts';
import type { Asking } from '../Asking.ts';
import type { ShotSubject } from '../subjects.ts';
import { type CloseUpInUse, closeUpInUse, ownMark } from './closeUpInUse.ts';
import { type RingScale, focusScaleOf } from './focusScaleOf.ts';

/** The ring of a shot's glass as it serves that shot: angles for distances as they are taped, whatever close-up lens is on. */
export interface ShotRing {
  readonly scale: RingScale;
  readonly closeUp: CloseUpInUse | undefined;
  /** Ring angle that focuses at a distance from the sensor plane. Throws `NoAnswer` beyond the scale. */
  readonly angleAt: (distanceMm: number) => number;
  /** Distance in focus at a ring angle. */
  readonly distanceAt: (angleDeg: number) => number;
}

export function shotRing(asking: Asking, subject: ShotSubject): ShotRing {
  return asking.ledger.cell(`shot ring|${subject.shot}`, () => {
    const scale = focusScaleOf(asking, subject);
    const closeUp = closeUpInUse(asking, subject);
    return {
      scale,
      closeUp,
      angleAt: (distanceMm) => {
        const mark = ownMark(closeUp, distanceMm);
        if (mark === undefined) throw new NoAnswer('', `With ${closeUp?.name ?? 'the close-up lens'} on, the ring does not reach that far.`);
        return scale.angleAt(mark);
      },
      distanceAt: (angleDeg) => throughCloseUp(closeUp, scale.distanceAt(angleDeg)),
    };
  });
}

function throughCloseUp(closeUp: CloseUpInUse | undefined, markMm: number): number {
  if (closeUp === undefined) return markMm;
  return seenThrough({ powerDpt: closeUp.powerDpt, focusDistanceMm: markMm, diopterToSensorMm: closeUp.toSensorMm }).tapeMm;
}
