import { opticalPath } from '../../assembly/opticalPath.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { printNumber } from '../../units/print.ts';
import { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import { type Bounded, through } from './Bounded.ts';
import { ringDrive, runOf } from './ringDrive.ts';
import { ringTurner } from './ringTurner.ts';

/** What a lens motor draws while it moves the ring of a glass, in watts. Amperes are these over the volts at its socket. */
export interface MotorCurrent {
  readonly movingW: Bounded;
  /** Standing against a load, as when it calibrates into a stop. */
  readonly stallW: Bounded | undefined;
  readonly says: string;
}

/**
 * A motor's current grows evenly with its torque, from that of running free to that of standing still. The power entered for
 * moving is taken as that of a ring that hardly resists. `undefined` where the piece is no motor, or its power is not entered.
 */
export function motorCurrent(ledger: Ledger, setup: string, glass: string, pieceRef: string): MotorCurrent | undefined {
  return ledger.cell(`motor current|${setup}|${glass}|${pieceRef}`, () => {
    const piece = setupPieces(ledger, setup, glass).get(pieceRef);
    const moving = piece?.part.figure('motor/movingW');
    if (piece === undefined || moving === undefined) return undefined;
    const stallW = piece.part.figure('motor/stallW');
    const share = stallW === undefined ? undefined : torqueShare(ledger, { setup, glass }, pieceRef);
    if (stallW === undefined || share === undefined) return { movingW: moving, stallW, says: `${piece.name} moving` };
    const at = (free: number, stalled: number, part: number) => free + (Math.max(stalled, free) - free) * Math.min(1, part);
    const movingW = {
      value: at(moving.value, stallW.value, share.value), low: at(moving.low, stallW.low, share.low), high: at(moving.high, stallW.high, share.high),
    };
    return { movingW, stallW, says: `${piece.name} turning its ring with ${printNumber(Math.min(1, share.value) * 100, 2)} % of its torque` };
  });
}

/** The torque the ring wants of the motor, over the motor's torque at standstill; `undefined` where another ring or nothing is known. */
function torqueShare(ledger: Ledger, subject: { setup: string; glass: string }, pieceRef: string): Bounded | undefined {
  if (opticalPath(ledger, subject.setup, subject.glass).focusedBy === undefined) return undefined;
  const asking = new Asking(ledger);
  try {
    if (ringTurner(asking, subject)?.piece.ref !== pieceRef) return undefined;
    const found = ringDrive(asking, subject);
    return found === undefined ? undefined : through(found.torque, (torqueNm) => runOf(found, { torqueNm }).torqueUse);
  } catch (thrown) {
    if (thrown instanceof NotEntered) return undefined;
    throw thrown;
  }
}
