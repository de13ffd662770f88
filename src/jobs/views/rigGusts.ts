import { GROUND, type RigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { type Vector, add, dot, scale } from '../../assembly/placing/Transform.ts';
import { worldSolids } from '../../assembly/space/worldSolids.ts';
import type { Asking } from '../../check/Asking.ts';
import { type Air, type WindOn, airPast, windOn } from '../../check/quantities/windOn.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import type { OuterPush } from './rigForces.ts';

/** The worst gust on a rig, shared out among its pieces. */
export interface RigGust {
  readonly air: Air;
  readonly forceN: number;
  /** The level way it blows, a vector of length one. */
  readonly along: Vector;
  readonly on: readonly OuterPush[];
}

/**
 * The gust that pushes a rig hardest: of the level directions all round the one with the largest outline, and the same from behind it. Nothing
 * where no day has wind. What each piece takes of it goes by its own outline, so that together they take what the outline of all does.
 */
export function rigGusts(asking: Asking, subject: SetupGlass, rig: RigNetwork): readonly RigGust[] {
  const air = airPast(asking, subject.setup);
  const refs = new Set(rig.model.bodies.filter(({ name }) => name !== GROUND).map(({ name }) => rig.pieceOf(name)));
  if (air === undefined) return [];
  const hardest = windOn(asking, subject, { air, refs, key: 'all that is held' }).reduce<WindOn | undefined>((most, one) => (one.forceN > (most?.forceN ?? 0) ? one : most), undefined);
  if (hardest === undefined) return [];
  const shares = [...refs].flatMap((ref) => shareOf(asking, subject, { air, ref, along: hardest.along }));
  const together = shares.reduce((sum, { forceN }) => sum + forceN, 0);
  return [1, -1].map((sense): RigGust => {
    const along = scale(hardest.along, sense);
    return { air, forceN: hardest.forceN, along, on: shares.map(({ ref, atMm, forceN }) => ({ ref, atMm, forceN: scale(along, (forceN * hardest.forceN) / together) })) };
  });
}

/** One piece as if it stood alone. */
function shareOf(asking: Asking, subject: SetupGlass, { air, ref, along }: { readonly air: Air; readonly ref: string; readonly along: Vector }): { readonly ref: string; readonly atMm: Vector; readonly forceN: number }[] {
  const own = worldSolids(asking.ledger, subject.setup, subject.glass).filter(({ piece }) => piece.ref === ref);
  const alone = windOn(asking, subject, { air, refs: new Set([ref]), key: `alone ${ref}` }).find((one) => dot(one.along, along) > 1 - 1e-9);
  if (alone === undefined || own.length === 0) return [];
  // Where it acts along the wind has no meaning for what it does: it is drawn at the piece.
  const depthMm = own.reduce((sum, { place }) => sum + dot(place.t, along), 0) / own.length;
  return [{ ref, forceN: alone.forceN, atMm: add(alone.centreMm, scale(along, depthMm)) }];
}
