import { type RigNetwork, rigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { add, dot, scale, subtract } from '../../assembly/placing/Transform.ts';
import { type GearRideOut, gearRideOut } from '../../calc/mechanics/gearRideOut.ts';
import { printNumber } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import { origin } from '../origin.ts';
import type { SetupGlass } from '../subjects.ts';
import { calibrationLimit } from './calibrationLimit.ts';
import { type CarriedBy, drivenFromGlass } from './drivenFromGlass.ts';
import { ringDrive } from './ringDrive.ts';
import { ringTorque } from './ringTorque.ts';
import { temperatureAt } from './temperatureAt.ts';
import { SPREADING, type ToothPush, toothPushes } from './toothForce.ts';

/** How far the push between two gears opens their mesh. */
export interface MeshOpening {
  readonly push: ToothPush;
  /** Along the teeth, N, and where it comes from. */
  readonly forceN: number;
  readonly says: string;
  /** Further apart than the pitch circles touch, as they stand, mm. */
  readonly placedMm: number;
  /** By which the push parts them, the worse way of turning, mm. */
  readonly opensMm: number;
  readonly rides: GearRideOut;
}

/** `undefined` where no driver is placed, the gears do not meet or are of unlike modules, or something is held by nothing. */
export function meshOpening(asking: Asking, subject: SetupGlass, carriedBy: CarriedBy = 'as built'): MeshOpening | undefined {
  const { ledger } = asking;
  return ledger.cell(`mesh opening|${subject.setup}|${subject.glass}|${carriedBy}`, () => {
    const push = toothPushes(ledger, subject.setup, subject.glass)[0];
    const rig = push === undefined ? undefined : rigNetwork(ledger, subject.setup, subject.glass, drivenFromGlass(ledger, subject, push, carriedBy));
    const pair = push?.mesh.pair;
    if (push === undefined || !push.mesh.meets || pair === undefined || rig === undefined || rig.network.freeMotions.length > 0 || Math.abs(pair.a.module - pair.b.module) > 0.01) return undefined;
    const { newtonMetres, says } = torqueAtDriver(asking, subject, push);
    const forceN = newtonMetres / push.driverRadiusM;
    const opensMm = Math.max(0, ...[1, -1].map((sense) => parting(rig, push, forceN, sense)));
    const placedMm = Math.max(0, push.mesh.centreDistanceMm - pair.centreDistanceMm);
    const rides = gearRideOut({ moduleMm: push.moduleMm, driverTeeth: push.driverTeeth, drivenTeeth: push.ringTeeth, pressureAngleDeg: 20, separationMm: placedMm + opensMm });
    return { push, forceN, says, placedMm, opensMm, rides };
  });
}

/** Along the line of centres, at the teeth: of the ring away from the driver, mm. */
function parting({ network, bodyOf }: RigNetwork, { ring, driver, at, along, away }: ToothPush, forceN: number, sense: number): number {
  const onRing = add(scale(along, sense * forceN), scale(away, SPREADING * forceN));
  const [a, b] = [bodyOf(ring.ref), bodyOf(driver.ref)];
  const { motion } = network.solve([{ body: a, forceN: onRing, atMm: at }, { body: b, forceN: scale(onRing, -1), atMm: at }]);
  return dot(subtract(motion.shiftAt(a, at), motion.shiftAt(b, at)), away);
}

/** A motor into a stop gives what its limit lets it, a hand as much as the ring wants. */
function torqueAtDriver(asking: Asking, subject: SetupGlass, { ring, driver, ringRadiusM, driverRadiusM }: ToothPush): { newtonMetres: number; says: string } {
  const stall = driver.piece.part.figure('motor/stallTorqueNm');
  if (stall === undefined) {
    const torque = ringTorque(asking, ring.piece, temperatureAt(asking, subject));
    return { newtonMetres: (torque.value * driverRadiusM) / ringRadiusM, says: `the ring wants ${torque.says}` };
  }
  const found = ringDrive(asking, subject);
  const limit = found === undefined ? undefined : calibrationLimit(asking, found)?.atMotorNm;
  return limit === undefined
    ? { newtonMetres: stall.value, says: `${driver.piece.name} into a stop with all its torque, ${printNumber(stall.value)} N·m ${origin(stall)}` }
    : { newtonMetres: limit, says: `${driver.piece.name} into a stop with its torque limit at ${printNumber(limit)} N·m, the least that turns the ring through` };
}
