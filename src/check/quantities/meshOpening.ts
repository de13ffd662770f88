import type { RigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { heldFast } from '../../assembly/hold/underWeight.ts';
import { add, dot, scale, subtract } from '../../assembly/placing/Transform.ts';
import { type GearRideOut, gearRideOut } from '../../calc/mechanics/gearRideOut.ts';
import { printNumber } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import { origin } from '../origin.ts';
import type { SetupGlass } from '../subjects.ts';
import { type CarriedBy, drivenFromGlass } from './drivenFromGlass.ts';
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

/** Of all drives of a glass, the one that is nearest to riding out; `undefined` where none meets its gear, or something is held by nothing. */
export function meshOpening(asking: Asking, subject: SetupGlass, carriedBy: CarriedBy = 'as built'): MeshOpening | undefined {
  return asking.ledger.cell(`mesh opening|${subject.setup}|${subject.glass}|${carriedBy}`, () => {
    const all = toothPushes(asking.ledger, subject.setup, subject.glass).flatMap((push) => openingBy(asking, subject, push, carriedBy) ?? []);
    return all.reduce<MeshOpening | undefined>((worst, one) => (worst === undefined || one.rides.use > worst.rides.use ? one : worst), undefined);
  });
}

function openingBy(asking: Asking, subject: SetupGlass, push: ToothPush, carriedBy: CarriedBy): MeshOpening | undefined {
  const { mesh: { meets, pair, centreDistanceMm }, driverRadiusM, driverTeeth, ringTeeth, moduleMm } = push;
  const rig = heldFast(asking.ledger, subject.setup, subject.glass, drivenFromGlass(asking.ledger, subject, push, carriedBy));
  if (!meets || pair === undefined || rig === undefined || rig.network.freeMotions.length > 0 || Math.abs(pair.a.module - pair.b.module) > 0.01) return undefined;
  const { newtonMetres, says } = torqueAtDriver(asking, subject, push);
  const forceN = newtonMetres / driverRadiusM;
  const opensMm = Math.max(0, ...[1, -1].map((sense) => parting(rig, push, forceN, sense)));
  const placedMm = Math.max(0, centreDistanceMm - pair.centreDistanceMm);
  const rides = gearRideOut({ moduleMm, driverTeeth, drivenTeeth: ringTeeth, pressureAngleDeg: 20, separationMm: placedMm + opensMm });
  return { push, forceN, says, placedMm, opensMm, rides };
}

/** Along the line of centres, at the teeth: of the ring away from the driver, mm. */
function parting({ network, bodyOf }: RigNetwork, { ring, driver, at, along, away }: ToothPush, forceN: number, sense: number): number {
  const onRing = add(scale(along, sense * forceN), scale(away, SPREADING * forceN));
  const [a, b] = [bodyOf(ring.ref), bodyOf(driver.ref)];
  const { motion } = network.solve([{ body: a, forceN: onRing, atMm: at }, { body: b, forceN: scale(onRing, -1), atMm: at }]);
  return dot(subtract(motion.shiftAt(a, at), motion.shiftAt(b, at)), away);
}

/** A motor into a stop gives all it has until a limit is set, a hand as much as the ring wants. */
function torqueAtDriver(asking: Asking, subject: SetupGlass, { ring, driver, ringRadiusM, driverRadiusM }: ToothPush): { newtonMetres: number; says: string } {
  const stall = driver.piece.part.figure('motor/stallTorqueNm');
  if (stall !== undefined) return { newtonMetres: stall.value, says: `${driver.piece.name} into a stop with all its torque, ${printNumber(stall.value)} N·m ${origin(stall)}` };
  const torque = ringTorque(asking, ring.piece, temperatureAt(asking, subject));
  return { newtonMetres: (torque.value * driverRadiusM) / ringRadiusM, says: `the ring wants ${torque.says}` };
}
