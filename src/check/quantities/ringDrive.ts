import { type Drive, drive } from '../../calc/focus/drive.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import { focus } from '../../standards/assumptions/focus.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { focusScaleOf } from './focusScaleOf.ts';
import { focusRing, ringTeeth } from './focusRing.ts';
import { type RingTorque, ringTorque } from './ringTorque.ts';
import { type RingTurner, ringTurner } from './ringTurner.ts';
import { temperatureAt } from './temperatureAt.ts';

/** A motor on the focus ring of a glass, at the temperature it works in. */
export interface RingDrive {
  readonly ring: SetupPiece;
  readonly motor: RingTurner;
  readonly ringTeeth: number;
  /** Turns of the motor for one of the ring. */
  readonly ratio: number;
  readonly stall: Figure;
  readonly noLoad: Figure;
  readonly efficiency: Figure;
  readonly torque: RingTorque;
  readonly temperature: Figure;
  readonly throwDeg: number;
}

/** The drive of a glass, of a shot at that shot's temperature. `undefined` where no motor turns the ring. */
export function ringDrive(asking: Asking, subject: SetupGlass & { readonly shot?: string }): RingDrive | undefined {
  const { setup, glass, shot } = subject;
  return asking.ledger.cell(`ring drive|${setup}|${glass}|${shot ?? ''}`, () => {
    const motor = ringTurner(asking, { setup, glass });
    if (motor === undefined || motor.kind !== 'motor') return undefined;
    const ring = focusRing(asking, { setup, glass });
    const { stall, noLoad } = asking.figures(motor.piece.part, { stall: 'motor/stallTorqueNm', noLoad: 'motor/noLoadRpm' });
    const temperature = temperatureAt(asking, subject);
    const teeth = ringTeeth(ring);
    return {
      ring, motor, ringTeeth: teeth, ratio: teeth / motor.teeth, stall, noLoad, efficiency: asking.assume(focus.meshEfficiency),
      torque: ringTorque(asking, ring, temperature), temperature, throwDeg: throwOf(asking, { setup, glass }, ring),
    };
  });
}

/** Turn of a ring from end to end: as entered, else between its outermost marks. */
export function throwOf(asking: Asking, subject: SetupGlass, ring: SetupPiece): number {
  return ring.part.figure('focus/throwDeg')?.value ?? focusScaleOf(asking, subject).throwDeg;
}

/** How a drive turns its ring; with another gear or motor where one is tried. */
export function runOf(
  { ringTeeth: teeth, motor, stall, noLoad, efficiency, torque, throwDeg }: RingDrive, tried: { teeth?: number; stallTorqueNm?: number; noLoadRpm?: number; torqueNm?: number } = {},
): Drive & { readonly ratio: number; readonly ringStallNm: number } {
  const ratio = teeth / (tried.teeth ?? motor.teeth);
  const stallTorqueNm = tried.stallTorqueNm ?? stall.value;
  const run = drive({
    stallTorqueNm, noLoadRpm: tried.noLoadRpm ?? noLoad.value, gearRatio: ratio, efficiency: efficiency.value, ringTorqueNm: tried.torqueNm ?? torque.value, throwDeg, moveDeg: 0, moveTimeS: 1,
  });
  return { ...run, ratio, ringStallNm: stallTorqueNm * ratio * efficiency.value };
}

/** Whether the motor turns the ring at all, whatever margin is left: below that, nothing about a move can be told. */
export const turnsAtAll = (found: RingDrive): boolean => runOf(found).torqueUse < 1;

/** Gears that can be put on a motor. */
export function gearsOf(part: PartView): number[] {
  const own = part.read('motor/gear/teeth') as number;
  return [...new Set([own, ...((part.read('motor/otherGears') ?? []) as readonly number[])])].toSorted((a, b) => a - b);
}
