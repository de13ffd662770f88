import { freeSide } from '../../assembly/hold/freeSide.ts';
import type { JointHold } from '../../assembly/hold/jointHold.ts';
import { pieceMasses } from '../../assembly/hold/pieceMasses.ts';
import { type Vector, cross, dot, length, subtract } from '../../assembly/placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { worldHulls } from '../../assembly/space/worldSolids.ts';
import { weightN } from '../../calc/mechanics/gravity.ts';
import { composite } from '../../calc/mechanics/massProperties.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import { mechanics } from '../../standards/assumptions/mechanics.ts';
import { printAmount, printNumber } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import { describeFigure } from '../describeFigure.ts';
import { origin } from '../origin.ts';
import type { SetupGlass } from '../subjects.ts';
import { SPREADING, toothPushes } from './toothForce.ts';
import { NOTHING_MUCH, type WindOn, airPast, speedNotEntered, windMoment, windMomentAtMost, windOn, windSays } from './windOn.ts';
import { worstAttitude } from './worstAttitude.ts';

/** What tries to turn a joint. */
export interface TurningCase {
  readonly by: 'weight' | 'touch' | 'motor' | 'wind';
  readonly momentNm: number;
  /** The moment's origin: "560 g × 110 mm × 2 for jolts (assumed)". */
  readonly says: string;
  /** The piece that does it. */
  readonly piece: SetupPiece | undefined;
  /** Of weight: in which attitude, and whether jolted: "held on its side and with a jolt". */
  readonly held?: string;
}

export interface Turning {
  readonly worst: TurningCase;
  readonly cases: readonly TurningCase[];
  readonly free: readonly SetupPiece[];
  /** What is left out of it. */
  readonly notes: readonly string[];
}

/**
 * Everything that tries to turn a joint about its own axis, with one glass; `undefined` where more than this joint holds. Where `slipNm`, at which it
 * would turn, is far off, a bound on the wind will do.
 */
export function turningMoment(asking: Asking, { setup, glass }: SetupGlass, { joint, at, axis }: Pick<JointHold, 'joint' | 'at' | 'axis'>, slipNm = 0): Turning | undefined {
  const { ledger } = asking;
  const free = freeSide(ledger, setup, glass, joint.path);
  if (free === undefined || free.size === 0) return undefined;
  const pieces = setupPieces(ledger, setup, glass);
  const own = [...free].flatMap((ref) => pieces.get(ref) ?? []);
  const arm = (place: Vector) => cross(axis, subtract(place, at.t));
  const build = own[0]?.build ?? '';
  const subject = { setup, glass };
  const calm = [byWeight(asking, subject, build, free, arm), ...byTouch(asking, subject, own, arm), ...byMotor(asking, subject, free, arm)];
  const cases = [...calm, ...byWind(asking, subject, { free, key: joint.path, arm, beyondNm: Math.max(...calm.map(({ momentNm }) => momentNm)), slipNm })];
  const worst = cases.reduce((most, one) => (one.momentNm > most.momentNm ? one : most));
  return { worst, cases, free: own, notes: speedNotEntered(ledger, setup, build) };
}

/** In the worst of the attitudes that the build comes into, and jolted there. */
function byWeight(asking: Asking, subject: SetupGlass, build: string, free: ReadonlySet<string>, arm: (place: Vector) => Vector): TurningCase {
  const { weighed, unweighed } = pieceMasses(asking.ledger, subject.setup, subject.glass, build);
  const missing = unweighed.filter(({ ref }) => free.has(ref));
  if (missing.length > 0) throw new NotEntered(missing.map(({ part }) => describeFigure(part, 'massG')));
  const whole = composite(weighed.filter(({ piece, placed }) => placed && free.has(piece.ref)));
  const { leverMm, says } = worstAttitude(asking.ledger, subject, build, arm(whole.centreMm as Vector));
  const factor = asking.assume(asking.ledger.at(`builds/${build}/purpose`) === 'vehicle' ? mechanics.vehicleFactor : mechanics.handlingFactor);
  return {
    by: 'weight', piece: undefined, momentNm: weightN(whole.massG) * leverMm * 1e-3 * factor.value, held: factor.value > 1 ? `${says} and with a jolt` : says,
    says: `${printAmount({ value: whole.massG, unit: 'g' })} × ${printAmount({ value: leverMm, unit: 'mm' })} × ${printNumber(factor.value)} for jolts ${origin(factor)}, ${says}`,
  };
}

/** What hands go to: screens and wheels. */
export const isTouched = ({ part }: SetupPiece): boolean => part.has('screen') || part.has('handWheel');

/** A finger on the edge of a screen, a hand on a wheel. */
function byTouch(asking: Asking, { setup, glass }: SetupGlass, own: readonly SetupPiece[], arm: (place: Vector) => Vector): TurningCase[] {
  return own.filter(isTouched).map((piece) => {
    const corners = [...worldHulls(asking.ledger, setup, glass)].flatMap(([solid, hull]) => (solid.piece.ref === piece.ref ? hull : []));
    const reach = corners.reduce((most, corner) => Math.max(most, length(arm(corner))), 0);
    const push: Figure = asking.assume(mechanics.knobForceN);
    return { by: 'touch', piece, momentNm: push.value * reach * 1e-3, says: `a hand with ${printAmount({ value: push.value, unit: 'N' })} ${origin(push)} on its edge × ${printAmount({ value: reach, unit: 'mm' })}` };
  });
}

interface Windward {
  readonly free: ReadonlySet<string>;
  readonly key: string;
  readonly arm: (place: Vector) => Vector;
  /** What something else turns it with already. */
  readonly beyondNm: number;
  readonly slipNm: number;
}

/** A gust on all that hangs beyond it: a screen is a sail. Upright, as wind is level. */
function byWind(asking: Asking, subject: SetupGlass, { free, key, arm, beyondNm, slipNm }: Windward): TurningCase[] {
  const air = airPast(asking, subject.setup);
  if (air === undefined) return [];
  const { momentNm: atMostNm, forceN } = windMomentAtMost(asking, subject, { air, refs: free, lever: arm });
  if (atMostNm <= beyondNm) return [];
  if (atMostNm <= NOTHING_MUCH * slipNm) return [{ by: 'wind', piece: undefined, momentNm: atMostNm, says: `wind with at most ${printAmount({ value: forceN, unit: 'N' })}, every piece from its widest side, in ${printAmount({ value: air.speedMps, unit: 'm/s' })} of air (${air.says})` }];
  const worst = windOn(asking, subject, { air, refs: free, key })
    .map((push) => ({ ...push, momentNm: windMoment(push, arm) }))
    .reduce<(WindOn & { momentNm: number }) | undefined>((most, one) => (most === undefined || one.momentNm > most.momentNm ? one : most), undefined);
  if (worst === undefined || worst.forceN === 0) return [];
  const leverMm = (worst.momentNm / worst.forceN) * 1000;
  return [{ by: 'wind', piece: undefined, momentNm: worst.momentNm, says: `wind with ${printAmount({ value: worst.forceN, unit: 'N' })}, ${windSays(air, worst.areaMm2)} × ${printAmount({ value: leverMm, unit: 'mm' })}` }];
}

/** A motor that drives into a stop: its whole torque at the teeth, and what spreads them. */
function byMotor(asking: Asking, { setup, glass }: SetupGlass, free: ReadonlySet<string>, arm: (place: Vector) => Vector): TurningCase[] {
  return toothPushes(asking.ledger, setup, glass).flatMap(({ ring, driver, at, along, away, driverRadiusM }): TurningCase[] => {
    const stall = driver.piece.part.figure('motor/stallTorqueNm');
    if (stall === undefined || free.has(ring.ref) === free.has(driver.ref)) return [];
    const lever = arm(at);
    const forceN = stall.value / driverRadiusM;
    const leverMm = Math.abs(dot(lever, along)) + SPREADING * Math.abs(dot(lever, away));
    return [{
      by: 'motor', piece: driver.piece, momentNm: forceN * leverMm * 1e-3,
      says: `${driver.piece.name} into a stop: ${printNumber(stall.value)} N·m ${origin(stall)} at ${printAmount({ value: driverRadiusM * 1000, unit: 'mm' })} is ${printAmount({ value: forceN, unit: 'N' })} × ${printAmount({ value: leverMm, unit: 'mm' })}`,
    }];
  });
}
