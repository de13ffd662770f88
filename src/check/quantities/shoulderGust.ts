import { type Vector, cross, subtract } from '../../assembly/placing/Transform.ts';
import { worldSolids } from '../../assembly/space/worldSolids.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { type Air, airPast, windMoment, windOn } from './windOn.ts';

/** Hands and pad of a shoulder rig. */
export interface Held {
  readonly padMm: Vector;
  readonly handsAheadMm: number;
  /** What the hands hold in still air: up, or down below zero. */
  readonly handForceN: number;
}

/** A gust on a shoulder rig, from the side that asks most of the hands. */
export interface ShoulderGust {
  readonly air: Air;
  readonly forceN: number;
  readonly areaMm2: number;
  /** Both hands together in that gust, weight and wind as one. */
  readonly handForceN: number;
  /** What it lifts or presses down, and turns sideways, at the hands. */
  readonly upDownN: number;
  readonly sidewaysN: number;
}

/**
 * Statics about the pad: what tips the rig fore and aft is held up or down by the hands, what turns it about the upright is held
 * sideways, each moment over the distance to the hands; a gust may come from either side. `undefined`: no wind gets at it.
 */
export function shoulderGust(asking: Asking, subject: SetupGlass, build: string, { padMm, handsAheadMm, handForceN }: Held): ShoulderGust | undefined {
  const air = airPast(asking, subject.setup);
  if (air === undefined) return undefined;
  const refs = new Set(worldSolids(asking.ledger, subject.setup, subject.glass).filter(({ piece }) => piece.build === build).map(({ piece }) => piece.ref));
  const gusts = windOn(asking, subject, { air, refs, key: `rig of ${build}` }).map((push): ShoulderGust => {
    const atHands = (axis: Vector) => (windMoment(push, (place) => cross(axis, subtract(place, padMm))) * 1000) / handsAheadMm;
    const [upDownN, sidewaysN] = [atHands([1, 0, 0]), atHands([0, 1, 0])];
    return { air, forceN: push.forceN, areaMm2: push.areaMm2, upDownN, sidewaysN, handForceN: Math.hypot(Math.abs(handForceN) + upDownN, sidewaysN) };
  });
  return gusts.reduce<ShoulderGust | undefined>((worst, one) => (worst === undefined || one.handForceN > worst.handForceN ? one : worst), undefined);
}
