import type { RigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { type Vector, add, axis, length, scale, subtract } from '../../assembly/placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { type WorldSolid, hullOf, worldSolids } from '../../assembly/space/worldSolids.ts';
import type { Asking } from '../../check/Asking.ts';
import { isTouched } from '../../check/quantities/turningMoment.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Solid } from '../../shoot/schema/mechanics.ts';
import { mechanics } from '../../standards/assumptions/mechanics.ts';
import type { OuterPush } from './rigForces.ts';

/** A hand on a piece that hands go to. */
export interface RigHand {
  readonly piece: SetupPiece;
  readonly pushN: Figure;
  readonly on: OuterPush;
}

/** A hand on each screen and wheel of a rig: it presses on the broad side, at the corner furthest from where the piece is held. */
export function rigHands(asking: Asking, { setup, glass }: SetupGlass, rig: RigNetwork): readonly RigHand[] {
  const standing = new Set(rig.model.bodies.map(({ name }) => rig.pieceOf(name)));
  const pushN = asking.assume(mechanics.knobForceN);
  return [...setupPieces(asking.ledger, setup, glass).values()].filter((piece) => standing.has(piece.ref) && isTouched(piece)).flatMap((piece): RigHand[] => {
    const [solid] = worldSolids(asking.ledger, setup, glass).filter((one) => one.piece.ref === piece.ref).toSorted((a, b) => broadSide(b.solid) - broadSide(a.solid));
    if (solid === undefined) return [];
    const held = heldAt(rig, piece.ref) ?? solid.place.t;
    const atMm = hullOf(solid).reduce((most, corner) => (length(subtract(corner, held)) > length(subtract(most, held)) ? corner : most));
    return [{ piece, pushN, on: { ref: piece.ref, atMm, forceN: scale(awayFromHand(solid), pushN.value) } }];
  });
}

/** Middle of the places where a piece is held. */
function heldAt({ springs }: RigNetwork, ref: string): Vector | undefined {
  const places = springs.flatMap((hold) => (hold !== 'ground' && [hold.joint.a.ref, hold.joint.b.ref].includes(ref) ? [hold.at.t] : []));
  return places.length === 0 ? undefined : scale(places.reduce<Vector>(add, [0, 0, 0]), 1 / places.length);
}

/** Through the broad side, away from who stands there: forward, or towards the middle of the rig from either side of it. */
function awayFromHand({ solid, place }: WorldSolid): Vector {
  const through = axis(place.r, thinnest(solid));
  const sense = Math.abs(through[2]) > 0.3 ? Math.sign(through[2]) : -Math.sign(through[0] * place.t[0]) || 1;
  return scale(through, sense);
}

const sizes = (solid: Solid): readonly number[] =>
  solid.shape === 'box' ? solid.sizeMm : ['x', 'y', 'z'].map((way) => (way === solid.along ? solid.lengthMm : solid.diameterMm));

const thinnest = (solid: Solid): 0 | 1 | 2 => sizes(solid).reduce((least, size, at, all) => (size < (all[least] ?? 0) ? at : least), 0) as 0 | 1 | 2;

/** Area across the thinnest way, mm². */
const broadSide = (solid: Solid): number => sizes(solid).reduce((product, size) => product * size, 1) / Math.max(1e-9, Math.min(...sizes(solid)));
