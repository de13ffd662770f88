import { setupPieces } from '../../assembly/setupPieces.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import { type SetupGlass, eachGlass, eachShot, type ShotSubject } from '../subjects.ts';
import { ringTurner } from './ringTurner.ts';

export interface DrivenGlass extends SetupGlass {
  /** `build/piece` of the motor, where it is known. */
  readonly piece?: string;
}

/** Every glass of every setup whose ring a motor turns, or may turn, once it is said which. */
export function eachDriven(ledger: Ledger): DrivenGlass[] {
  return eachGlass(ledger).flatMap((subject): DrivenGlass[] => {
    if (opticalPath(ledger, subject.setup, subject.glass).focusedBy === undefined) return [];
    try {
      const turner = ringTurner(new Asking(ledger), subject);
      return turner?.kind === 'motor' ? [{ ...subject, piece: turner.piece.ref }] : [];
    } catch (thrown) {
      if (thrown instanceof NotEntered) return hasMotor(ledger, subject) ? [subject] : [];
      throw thrown;
    }
  });
}

/** Shots that somebody pulls, through a glass that focuses. */
export function eachPulled(ledger: Ledger): ShotSubject[] {
  return eachShot(ledger).filter(({ setup, glass, shot }) => ledger.at(`shots/${shot}/pulledBy`) !== undefined && opticalPath(ledger, setup, glass).focusedBy !== undefined);
}

const hasMotor = (ledger: Ledger, { setup, glass }: SetupGlass): boolean => [...setupPieces(ledger, setup, glass).values()].some(({ part }) => part.has('motor'));
