import { weightLoads } from '../../assembly/hold/rigLoads.ts';
import { GROUND, type RigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { stepsFrom } from '../../assembly/hold/stepsFrom.ts';
import { type Vector, add, cross, scale, subtract } from '../../assembly/placing/Transform.ts';
import { weightN } from '../../calc/mechanics/gravity.ts';
import type { NetworkLoad } from '../../calc/mechanics/network/model.ts';
import type { Answered } from '../../calc/mechanics/network/Network.ts';
import { outOf } from '../../calc/mechanics/vector.ts';

/** A force and a moment at a place, in the camera's own directions. */
export interface PlacedForce {
  readonly atMm: Vector;
  readonly forceN: Vector;
  readonly momentNm: Vector;
}

/** What a joint does to the piece it holds; to the one that holds, nearer to the ground, it does the opposite. */
export interface JointForce extends PlacedForce {
  readonly path: string;
  readonly type: string;
  readonly by: string;
  readonly on: string;
}

/** What acts on one piece from outside the rig: its weight, wind, a hand, the teeth of a gear, or what holds the rig up. */
export interface OuterForce extends PlacedForce {
  readonly ref: string;
  readonly kind: 'weight' | 'wind' | 'hand' | 'teeth' | 'ground';
}

/** What a gust or a hand does to one piece. */
export type OuterPush = Pick<OuterForce, 'ref' | 'atMm' | 'forceN'>;

export interface RigForces {
  readonly joints: readonly JointForce[];
  readonly outer: readonly OuterForce[];
  /** Joints that do not give at all and lie on a loop with others of their kind: how these share the load cannot be told. */
  readonly untold: readonly string[];
}

/** Everything that acts on the pieces of a rig under its weight, pulling one way (a vector of length one), and in a gust or under a hand. */
export function weightForces(rig: RigNetwork, way: Vector, { kind, on }: { readonly kind: 'wind' | 'hand'; readonly on: readonly OuterPush[] } = { kind: 'wind', on: [] }): RigForces {
  const answered = rig.network.solve([...weightLoads(rig, way), ...on.map(({ ref, atMm, forceN }): NetworkLoad => ({ body: rig.bodyOf(ref), forceN, atMm }))]);
  const pulled = weightsOf(rig, way);
  const pushed = on.map((push): OuterForce => ({ ...push, kind, momentNm: NONE }));
  return { ...jointForces(rig, answered), outer: [...pulled, ...pushed, ...groundForces(rig, answered), ...fastForces(rig, answered, pulled, way)] };
}

/** Everything that acts on the pieces of a rig when a driver pushes a ring at a place and is pushed back as hard, with no weight. */
export function pushForces(rig: RigNetwork, { ring, driver, atMm, forceN }: { readonly ring: string; readonly driver: string; readonly atMm: Vector; readonly forceN: Vector }): RigForces {
  const sides = [{ ref: ring, forceN }, { ref: driver, forceN: scale(forceN, -1) }];
  const loads = sides.map((one): NetworkLoad => ({ body: rig.bodyOf(one.ref), forceN: one.forceN, atMm }));
  const answered = rig.network.solve(loads);
  const teeth = sides.map((one): OuterForce => ({ ref: one.ref, kind: 'teeth', atMm, forceN: one.forceN, momentNm: NONE }));
  return { ...jointForces(rig, answered), outer: [...teeth, ...groundForces(rig, answered)] };
}

const NONE: Vector = [0, 0, 0];

function jointForces(rig: RigNetwork, answered: Answered): Pick<RigForces, 'joints' | 'untold'> {
  const [carried, bonds] = [answered.springs(), answered.bonds()];
  // Bonds first, then each joint that does not give, in their order.
  let stiff = rig.model.bonds?.length ?? 0;
  const steps = stepsFromGround(rig);
  const joints: JointForce[] = [];
  const untold: string[] = [];
  rig.springs.forEach((hold, at) => {
    const spring = carried[at];
    const wrench = spring === undefined ? bonds[stiff++] : { forceN: outOf(spring.axes, spring.onB.forceN), momentNm: outOf(spring.axes, spring.onB.momentNm) };
    if (hold === 'ground') return;
    const { joint: { a, b, path }, type, at: { t } } = hold;
    if (wrench === undefined) untold.push(`${b.piece.name} on ${a.piece.name}`);
    else if ((steps.get(a.ref) ?? 0) <= (steps.get(b.ref) ?? 0)) joints.push({ path, type: type.name, by: a.ref, on: b.ref, atMm: t, ...wrench });
    else joints.push({ path, type: type.name, by: b.ref, on: a.ref, atMm: t, forceN: scale(wrench.forceN, -1), momentNm: scale(wrench.momentNm, -1) });
  });
  return { joints, untold };
}

/** How many joints lie between each piece and what the rig stands on. */
function stepsFromGround({ springs, stands }: RigNetwork): ReadonlyMap<string, number> {
  const feet = stands.contacts.length > 0 ? stands.contacts.map(({ ref }) => ref) : [stands.anchor];
  return stepsFrom(feet, springs.flatMap((hold) => (hold === 'ground' ? [] : [[hold.joint.a.ref, hold.joint.b.ref] as const])));
}

/** What the head, the shoulder or the hands do to what stands on them. */
function groundForces({ springs, model, pieceOf }: RigNetwork, answered: Answered): OuterForce[] {
  const carried = answered.springs();
  return springs.flatMap((hold, at): OuterForce[] => {
    const [own, spring] = [carried[at], model.springs?.[at]];
    if (hold !== 'ground' || own === undefined || spring === undefined) return [];
    const [foot, does] = spring.a === GROUND ? [spring.b, own.onB] : [spring.a, own.onA];
    return [{ ref: pieceOf(foot), kind: 'ground', atMm: spring.atMm, forceN: outOf(own.axes, does.forceN), momentNm: outOf(own.axes, does.momentNm) }];
  });
}

/** Where a piece is simply held fast: what holds it bears all that comes to it by its joints, and its own weight. */
function fastForces({ model, pieceOf }: RigNetwork, answered: Answered, pulled: readonly OuterForce[], way: Vector): OuterForce[] {
  const fast = model.bodies.find(({ name, fixed }) => fixed === true && name !== GROUND);
  if (fast === undefined) return [];
  const ref = pieceOf(fast.name);
  const { forceN, momentNm } = answered.reaction(fast.centreMm);
  const atMm = pulled.find((one) => one.ref === ref)?.atMm ?? fast.centreMm;
  const own = scale(way, -weightN(fast.massG ?? 0));
  // The reaction is stated about the centre of the body that is held; of a rod that is its first stretch only.
  const moved = add(momentNm, scale(cross(subtract(fast.centreMm, atMm), forceN), 1e-3));
  return [{ ref, kind: 'ground', atMm, forceN: add(forceN, own), momentNm: add(moved, scale(cross(subtract(fast.centreMm, atMm), own), 1e-3)) }];
}

/** The weight of each piece at its centre, all stretches of a rod together. */
function weightsOf({ model, pieceOf }: RigNetwork, way: Vector): OuterForce[] {
  const pieces = new Map<string, { massG: number; moment: Vector }>();
  for (const { name, massG = 0, centreMm } of model.bodies) {
    if (massG === 0) continue;
    const ref = pieceOf(name);
    const before = pieces.get(ref) ?? { massG: 0, moment: NONE };
    pieces.set(ref, { massG: before.massG + massG, moment: add(before.moment, scale(centreMm, massG)) });
  }
  return [...pieces].map(([ref, { massG, moment }]) => ({ ref, kind: 'weight', atMm: scale(moment, 1 / massG), forceN: scale(way, weightN(massG)), momentNm: NONE }));
}
