import { opticalPath } from '../../assembly/opticalPath.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import type { Asking } from '../Asking.ts';
import type { ShotSubject } from '../subjects.ts';
import { frontToSensor, outermost } from './alongAxis.ts';

/** Close-up lenses ahead of everything else. */
export interface CloseUpInUse {
  /** Of several, the sum. */
  readonly powerDpt: number;
  readonly toSensorMm: number;
  readonly name: string;
}

/** The close-up lenses on the front in a shot: those the glass carries and the one the shot names. */
export function closeUpInUse(asking: Asking, subject: ShotSubject): CloseUpInUse | undefined {
  const { ledger } = asking;
  const { stack, closeUps, block, lens } = opticalPath(ledger, subject.setup, subject.glass);
  const behind = stack.findIndex(({ ref }) => ref === (block ?? lens)?.ref);
  const named = ledger.at(`shots/${subject.shot}/diopter`) as string | undefined;
  const parts = [
    ...closeUps.filter((piece) => stack.indexOf(piece) > behind).map(({ part }) => part),
    ...(named === undefined ? [] : [new PartView(ledger, named)]),
  ];
  if (parts.length === 0) return undefined;
  const powerDpt = parts.reduce((sum, part) => sum + asking.figure(part, 'closeUp/powerDpt').value, 0);
  return { powerDpt, toSensorMm: closeUpToSensor(asking, subject), name: parts.map(({ name }) => name).join(' and ') };
}

/** Where a close-up lens sits: on the outermost front. */
export function closeUpToSensor(asking: Asking, subject: ShotSubject): number {
  const front = outermost(asking, subject);
  return front === undefined ? 0 : frontToSensor(asking, subject, front).value;
}

/** The lens's own mark for a subject seen through close-up lenses; `Infinity` and beyond give `undefined` beyond. */
export function ownMark(closeUp: CloseUpInUse | undefined, distanceMm: number): number | undefined {
  if (closeUp === undefined) return distanceMm;
  const vergence = 1000 / (distanceMm - closeUp.toSensorMm) - closeUp.powerDpt;
  // A subject just where the close-up lens focuses is the lens's infinity; rounding must not carry it beyond.
  if (Math.abs(vergence) < 1e-9) return Infinity;
  return vergence < 0 ? undefined : 1000 / vergence + closeUp.toSensorMm;
}
