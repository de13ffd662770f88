import { focus } from '../../standards/assumptions/focus.ts';
import type { Asking } from '../Asking.ts';
import type { RingDrive } from './ringDrive.ts';

/** The torque limit to set on a motor before it learns the stops of a ring. */
export interface CalibrationLimit {
  /** The least that turns the ring through, N·m at the motor; `undefined` where none does. */
  readonly atMotorNm: number | undefined;
}

/** `undefined` where the motor states no limits that can be set. */
export function calibrationLimit(asking: Asking, { motor, torque, ratio, efficiency }: RingDrive): CalibrationLimit | undefined {
  const limits = motor.piece.part.read('motor/torqueLimitsNm') as readonly number[] | undefined;
  if (limits === undefined) return undefined;
  const least = (torque.value * asking.assume(focus.calibrationMargin).value) / (ratio * efficiency.value);
  return { atMotorNm: limits.toSorted((a, b) => a - b).find((limit) => limit >= least) };
}
