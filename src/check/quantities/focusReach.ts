import { opticalPath } from '../../assembly/opticalPath.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { closeUp as seenThrough } from '../../calc/optics/closeUp.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import type { ShotSubject } from '../subjects.ts';
import { frontToSensor } from './alongAxis.ts';
import { type CloseUpInUse, closeUpInUse } from './closeUpInUse.ts';
import { type ShotDistances, shotDistances } from './shotDistances.ts';

/** How near and far a glass focuses in a shot, mm from the sensor plane. */
export interface FocusReach {
  readonly nearMm: number;
  readonly farMm: number;
  /** The piece whose ring is turned. */
  readonly ring: SetupPiece;
  readonly closest: Figure;
  /** Its closest distance without a close-up lens, from the sensor plane. */
  readonly aloneNearMm: number;
  readonly closeUp: CloseUpInUse | undefined;
}

export function focusReach(asking: Asking, subject: ShotSubject): FocusReach {
  const { focusedBy: ring } = opticalPath(asking.ledger, subject.setup, subject.glass);
  if (ring === undefined) throw new NotEntered([{ path: `glasses/${subject.glass}/stack`, says: 'the piece of the glass that focuses' }]);
  const closest = asking.figure(ring.part, 'focus/closeMm');
  const ahead = ring.part.read('focus/datum') === 'front' ? frontToSensor(asking, subject, ring).value : 0;
  const aloneNearMm = closest.value + ahead;
  const closeUp = closeUpInUse(asking, subject);
  if (closeUp === undefined) return { nearMm: aloneNearMm, farMm: Infinity, ring, closest, aloneNearMm, closeUp };
  const { near, far } = reachThrough(closeUp, aloneNearMm);
  return { nearMm: near, farMm: far, ring, closest, aloneNearMm, closeUp };
}

/** Near and far ends of the scale as they lie with a close-up lens on. */
export function reachThrough({ powerDpt, toSensorMm }: Pick<CloseUpInUse, 'powerDpt' | 'toSensorMm'>, aloneNearMm: number): { near: number; far: number } {
  const at = (focusDistanceMm: number): number => seenThrough({ powerDpt, focusDistanceMm, diopterToSensorMm: toSensorMm }).tapeMm;
  return { near: at(aloneNearMm), far: at(Infinity) };
}

/** How deep a shot sits in the range: near and far end, whichever is worse; up to 1 it is reached. */
export function reachUse({ nearMm, farMm }: ShotDistances, reach: { nearMm: number; farMm: number }): number {
  const far = reach.farMm === Infinity ? 0 : farMm / reach.farMm;
  return Math.max(reach.nearMm / nearMm, far);
}

/** Whether a shot lies outside what its glass can focus; `false` where that cannot be told. What is out of reach has no depth to speak of. */
export function outOfReach(asking: Asking, subject: ShotSubject): boolean {
  try {
    return reachUse(shotDistances(asking, subject.shot), focusReach(asking, subject)) > 1;
  } catch (thrown) {
    if (thrown instanceof NotEntered) return false;
    throw thrown;
  }
}
