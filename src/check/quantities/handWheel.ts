import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import { focus } from '../../standards/assumptions/focus.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { controlPath } from './controlDelay.ts';
import { focusRing, ringTeeth } from './focusRing.ts';
import { throwOf } from './ringDrive.ts';
import { ringTurner } from './ringTurner.ts';

/** The wheel in the hand, and what a turn of it does at the ring. */
export interface HandWheel {
  readonly piece: SetupPiece;
  /** From stop to stop. */
  readonly turn: Figure;
  readonly ringDegPerDeg: number;
  /** Its whole turn serves the whole throw. */
  readonly mapped: boolean;
  /** Geared to the ring itself, on the rods. */
  readonly onBoard: boolean;
}

/** `undefined` where a hand turns the ring itself, or where no hand reaches the motor (which the lines' question tells). */
export function handWheel(asking: Asking, subject: SetupGlass): HandWheel | undefined {
  return asking.ledger.cell(`hand wheel|${subject.setup}|${subject.glass}`, () => {
    const turner = ringTurner(asking, subject);
    const onBoard = turner?.kind === 'wheel';
    const piece = onBoard ? turner.piece : controlPath(asking, subject)?.hand;
    if (turner === undefined || piece === undefined) return undefined;
    const ring = focusRing(asking, subject);
    const turn = asking.figure(piece.part, 'handWheel/turnDeg');
    const mapped = !onBoard && piece.part.read('handWheel/mapsThrow') !== false;
    const ownRatio = onBoard ? (piece.part.figure('handWheel/ratio')?.value ?? 1) : 1;
    const ringDegPerDeg = mapped ? throwOf(asking, subject, ring) / turn.value : (ownRatio * turner.teeth) / ringTeeth(ring);
    return { piece, turn, ringDegPerDeg, mapped, onBoard };
  });
}

/** Smallest step of a wheel, at the ring; 0 where it has none. */
export function stepDegOf({ piece, turn, ringDegPerDeg }: HandWheel): number {
  const steps = piece.part.read('handWheel/steps') as number | undefined;
  return steps === undefined ? 0 : (turn.value / steps) * ringDegPerDeg;
}

/** A length on the marked edge of the wheel, as a turn of the ring. */
export function edgeToRingDeg(asking: Asking, { piece, ringDegPerDeg }: HandWheel, edgeMm: number): number {
  const diameter = piece.part.figure('handWheel/diameterMm') ?? asking.assume(focus.wheelDiameterMm);
  return ((360 * edgeMm) / (Math.PI * diameter.value)) * ringDegPerDeg;
}
