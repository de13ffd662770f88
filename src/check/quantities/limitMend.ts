import { printAmount } from '../../units/print.ts';
import type { Mend } from '../answer.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { calibrationLimit } from './calibrationLimit.ts';
import { ringDrive } from './ringDrive.ts';

/** A motor that is let give no more than turns the ring through, where it can be limited: `useAt` for the share of all its torque that this is. */
export function limitMend(asking: Asking, subject: SetupGlass, motor: SetupPiece, useAt: (share: number) => number): Mend[] {
  const found = ringDrive(asking, subject);
  const limitNm = found === undefined ? undefined : calibrationLimit(asking, found)?.atMotorNm;
  const stallNm = motor.part.figure('motor/stallTorqueNm')?.value;
  if (limitNm === undefined || stallNm === undefined || limitNm >= stallNm) return [];
  return [{ says: `Set the torque limit of ${motor.name} to ${printAmount({ value: limitNm, unit: 'N·m' })}, the least that turns the ring through`, use: useAt(limitNm / stallNm), costs: 'before it learns the stops; slower on a stiff ring' }];
}
