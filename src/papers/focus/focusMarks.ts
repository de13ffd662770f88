import { type Depth, depthAt } from '../../check/quantities/depthAt.ts';
import { focusRing } from '../../check/quantities/focusRing.ts';
import { type RingScale, focusScaleOf } from '../../check/quantities/focusScaleOf.ts';
import { handWheel } from '../../check/quantities/handWheel.ts';
import { shotRing } from '../../check/quantities/ringAngle.ts';
import { scaleMarks } from '../../check/quantities/scaleMarks.ts';
import { shotsOf } from '../../check/quantities/shootFigures.ts';
import type { Asking } from '../../check/Asking.ts';
import type { System } from '../../units/print.ts';
import type { Shot } from '../../shoot/schema/day.ts';
import { ifEntered } from '../entered.ts';

/** A surface that is marked: the wheel in a hand, or the ring itself. */
export interface MarkedSurface {
  readonly name: string;
  readonly diameterMm: number;
  /** From the far end of the scale to the near one, on this surface. */
  readonly turnDeg: number;
  /** Where a distance stands, from the far end. */
  readonly turnAt: (distanceMm: number) => number;
  readonly scale: RingScale;
  readonly marks: readonly { readonly distanceMm: number; readonly turnDeg: number; readonly taped: boolean }[];
  readonly shots: readonly ShotMarks[];
}

/** The marks of one shot, with its depth at the stop it is shot at. */
export interface ShotMarks {
  readonly shot: string;
  readonly tStop: number;
  readonly marks: readonly { readonly distanceMm: number; readonly turnDeg: number; readonly depth: { readonly fromDeg: number; readonly toDeg: number } | undefined }[];
}

/** The surface to mark for a glass: the hand wheel's, else the ring's. Throws `NotEntered` where its diameter or the scale is missing. */
export function markedSurface(asking: Asking, setup: string, glass: string, system: System): MarkedSurface {
  const subject = { setup, glass };
  const scale = focusScaleOf(asking, subject);
  const wheel = ifEntered(() => handWheel(asking, subject));
  const ring = focusRing(asking, subject);
  const diameter = wheel === undefined ? asking.figure(ring.part, 'focus/ringDiameterMm') : asking.figure(wheel.piece.part, 'handWheel/diameterMm');
  const perRingDeg = 1 / (wheel?.ringDegPerDeg ?? 1);
  const far = scale.angleAt(scale.farMm);
  const turnAt = (distanceMm: number) => Math.abs(scale.angleAt(distanceMm) - far) * perRingDeg;
  return {
    name: wheel?.piece.name ?? ring.name, diameterMm: diameter.value, turnDeg: scale.throwDeg * perRingDeg, turnAt, scale,
    marks: scaleMarks(scale, system).map(({ distanceMm, taped }) => ({ distanceMm, turnDeg: turnAt(distanceMm), taped })),
    shots: shotsOf(asking.ledger, setup).filter((shot) => asking.ledger.at(`shots/${shot}/glass`) === glass).map((shot) => shotMarks(asking, { setup, glass, shot }, scale, (ringDeg) => Math.abs(ringDeg - far) * perRingDeg)),
  };
}

/** Distances as taped; a close-up lens on the front moves where they stand on the ring. */
function shotMarks(asking: Asking, subject: { setup: string; glass: string; shot: string }, scale: RingScale, turnOf: (ringDeg: number) => number): ShotMarks {
  const path = `shots/${subject.shot}`;
  const stop = asking.ledger.at(`${path}/tStop`) as number | { value: number };
  const stated = asking.ledger.at(`${path}/marksMm`) as readonly number[] | undefined;
  const subjects = ((asking.ledger.at(`${path}/subject`) ?? []) as NonNullable<Shot['subject']>).map(({ distanceMm }) => (distanceMm === 'infinity' ? Infinity : distanceMm));
  const turnAt = (mm: number) => ifEntered(() => turnOf(shotRing(asking, subject).angleAt(mm)));
  const [farTurn, nearTurn] = [scale.farMm, scale.nearMm].map((mm) => turnOf(scale.angleAt(mm))) as [number, number];
  return {
    shot: subject.shot, tStop: typeof stop === 'number' ? stop : stop.value,
    marks: [...new Set(stated ?? subjects)].toSorted((a, b) => b - a).flatMap((distanceMm): ShotMarks['marks'][number][] => {
      const turnDeg = turnAt(distanceMm);
      if (turnDeg === undefined) return [];
      const depth = ifEntered((): Depth => depthAt(asking, subject, distanceMm));
      if (depth === undefined || Number.isNaN(depth.nearMm) || Number.isNaN(depth.farMm)) return [{ distanceMm, turnDeg, depth: undefined }];
      return [{ distanceMm, turnDeg, depth: { fromDeg: (depth.farMm < distanceMm ? undefined : turnAt(depth.farMm)) ?? farTurn, toDeg: turnAt(depth.nearMm) ?? nearTurn } }];
    }),
  };
}
