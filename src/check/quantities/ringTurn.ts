import { scale } from '../../calc/focus/scale.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import type { ShotSubject } from '../subjects.ts';
import { closeUpInUse, ownMark } from './closeUpInUse.ts';
import { focusReach } from './focusReach.ts';
import { shotDistances } from './shotDistances.ts';
import { distanceMarks } from './distanceMarks.ts';

/** How much of the ring's whole throw a shot uses, 0 to 1: from its marks, without them evenly in dioptres. The whole where that cannot be told. */
export function ringTurn(asking: Asking, subject: ShotSubject): number {
  try {
    const { ring, aloneNearMm } = focusReach(asking, subject);
    const asked = shotDistances(asking, subject.shot);
    const [near, far] = [asked.nearMm, asked.farMm].map((mm) => Math.max(aloneNearMm, ownMark(closeUpInUse(asking, subject), mm) ?? Infinity));
    const marks = distanceMarks(ring.part, 'focus/marks', 'angleDeg').map(({ distanceMm, value }) => ({ distanceMm, angleDeg: value }));
    const ends = marks.map(({ distanceMm }) => distanceMm);
    const inside = [near, far].every((mm) => mm !== undefined && mm >= Math.min(...ends) && mm <= Math.max(...ends));
    if (near === undefined || far === undefined) return 1;
    if (marks.length < 2 || !inside) return (1 / near - 1 / far) * aloneNearMm;
    const angles = marks.map(({ angleDeg }) => angleDeg);
    const angleAt = (atDistanceMm: number) => Number((scale({ marks, atDistanceMm }) as { angleDeg: number }).angleDeg);
    return Math.abs(angleAt(near) - angleAt(far)) / (Math.max(...angles) - Math.min(...angles));
  } catch (thrown) {
    if (thrown instanceof NotEntered) return 1;
    throw thrown;
  }
}
