import { axisOf } from '../mates.ts';
import { type Chain, type Values, type Way, chainOf, settingsAt, settingsWith, slotsOf, wayBetween } from './chain.ts';
import type { GearPair } from './gears.ts';
import { jointTransform } from './jointFrame.ts';
import type { ModelJoint, ModelMesh, RigModel, Variable } from './rigModel.ts';
import { type Transform, type Vector, axis, compose, cross, inverse, length, scale, turnVector } from './Transform.ts';

/** Something that has to come together: the ends of a joint that closes a loop, or two gears. */
export interface Constraint {
  readonly joint: ModelJoint;
  readonly pair: GearPair | undefined;
  readonly way: readonly Way[];
  /** Everything that could move one end against the other. */
  readonly variables: readonly Variable[];
}

/** Of a model alone, so that they are found once for all who place with it. */
export function constraintsOf(model: RigModel): readonly Constraint[] {
  const known = CONSTRAINTS.get(model) ?? constraintsIn(model);
  CONSTRAINTS.set(model, known);
  return known;
}

const CONSTRAINTS = new WeakMap<RigModel, readonly Constraint[]>();

function constraintsIn(model: RigModel): Constraint[] {
  const meshes = model.meshes.filter((mesh): mesh is ModelMesh & { pair: GearPair } => mesh.pair !== undefined);
  return [...model.loops.map((loop) => ({ joint: loop, pair: undefined })), ...meshes.map((mesh) => ({ joint: mesh as ModelJoint, pair: mesh.pair }))].map(({ joint, pair }) => {
    const way = wayBetween(model, joint.joint.a.ref, joint.joint.b.ref);
    const own = pair === undefined ? joint.variables : [];
    return { joint, pair, way, variables: [...way.flatMap(({ step }) => step.variables), ...own] };
  });
}

/** How far a loop is from closing. */
export interface LoopMisfit {
  /** Shift of end `b` from where it should be, mm: of a support that only pushes, the gap under it (negative: it presses). */
  readonly shift: Vector;
  /** Turn of end `b` from where it should be, radians. */
  readonly turn: Vector;
  /** Of what only touches: how far it stands beside the face it should touch, mm. */
  readonly besideMm: number;
  readonly pushes: boolean;
}

/** `relative`: where the part at end `b` stands, seen from the part at end `a`. */
export function loopMisfit(loop: ModelJoint, relative: Transform, wanted: Transform): LoopMisfit {
  const found = compose(compose(loop.backA, relative), loop.frameB);
  if (loop.touches === undefined) {
    const error = compose(inverse(wanted), found);
    return { shift: error.t, turn: turnVector(error.r), besideMm: 0, pushes: false };
  }
  const { kind } = loop.joint.a.point;
  const besideMm = Math.hypot(beyond(found.t[axisOf(kind, 'sideMm')], loop.touches.side), beyond(found.t[axisOf(kind, 'slideMm')], loop.touches.slide));
  return { shift: [0, 0, found.t[2] - wanted.t[2]], turn: [0, 0, 0], besideMm, pushes: true };
}

const beyond = (value: number, [low, high]: readonly [number, number]): number => Math.max(low - value, value - high, 0);

/** How two gears stand to each other, focus at infinity. */
export interface MeshFit {
  /** Distance of the axes. */
  readonly axesMm: number;
  /** Distance of the axes less the distance at which they mesh: positive where they are apart, negative where they jam. */
  readonly gapMm: number;
  /** Where the middle of the face at end `b` lies along the axis, from the middle of the face at end `a`. */
  readonly offsetMm: number;
  /** The same at the middle of the focus travel. */
  readonly midOffsetMm: number;
  /** Cross product of the axes: the sine of the lean. */
  readonly lean: Vector;
}

export function meshFit({ backA, frameB }: ModelJoint, { a, b, centreDistanceMm }: GearPair, relative: Transform): MeshFit {
  const partB = compose(backA, relative);
  const found = compose(partB, frameB);
  const other = axis(found.r, 2);
  const offsetMm = found.t[2];
  const axesMm = Math.hypot(found.t[0], found.t[1]);
  // Travel runs along its part's axis to the subject, which the axis of the point may look along or against.
  const travel = b.travelMm * partB.r[8] - a.travelMm * backA.r[8];
  return { axesMm, gapMm: axesMm - centreDistanceMm, offsetMm, midOffsetMm: offsetMm + travel / 2, lean: cross([0, 0, 1], scale(other, Math.sign(other[2]) || 1)) };
}

/** A turn counts as much as the shift it makes at this arm: a radian is 100 mm. */
const ARM_MM = 100;
/** Gears that have room along the axis are still drawn gently to the middle. */
const CENTRING = 0.02;

/** Writes a constraint's residuals (mm) into place; all come together where they are zero. */
export interface Evaluated {
  readonly size: number;
  readonly write: (x: Float64Array, into: Float64Array, from: number) => void;
}

export function evaluated({ joint, pair, way }: Constraint, values: Values, slotOf: ReadonlyMap<Variable, number>): Evaluated {
  const chain = chainOf(way, values, slotOf);
  return pair === undefined ? evaluatedLoop(joint, chain, values, slotOf) : evaluatedMesh(joint, pair, chain);
}

function evaluatedLoop(loop: ModelJoint, chain: Chain, values: Values, slotOf: ReadonlyMap<Variable, number>): Evaluated {
  const { kind } = loop.joint.a.point;
  const own = { fixed: settingsWith(loop, values), slots: slotsOf(loop, slotOf) };
  const still = jointTransform(kind, own.fixed);
  const wanted = (x: Float64Array): Transform => (own.slots.length === 0 ? still : jointTransform(kind, settingsAt(own, x)));
  if (loop.touches !== undefined) {
    return {
      size: 2,
      write: (x, into, from) => {
        const { shift, besideMm } = loopMisfit(loop, chain(x), wanted(x));
        into[from] = shift[2];
        into[from + 1] = besideMm;
      },
    };
  }
  return {
    size: 6,
    write: (x, into, from) => {
      const { shift, turn } = loopMisfit(loop, chain(x), wanted(x));
      for (const at of [0, 1, 2] as const) {
        into[from + at] = shift[at];
        into[from + 3 + at] = turn[at] * ARM_MM;
      }
    },
  };
}

function evaluatedMesh(mesh: ModelJoint, pair: GearPair, chain: Chain): Evaluated {
  return {
    size: 6,
    write: (x, into, from) => {
      const fit = meshFit(mesh, pair, chain(x));
      into[from] = fit.gapMm;
      into[from + 1] = Math.max(0, Math.abs(fit.midOffsetMm) - pair.offsetAllowedMm) * Math.sign(fit.midOffsetMm);
      into[from + 2] = fit.midOffsetMm * CENTRING;
      for (const at of [0, 1, 2] as const) into[from + 3 + at] = fit.lean[at] * ARM_MM;
    },
  };
}

/** How near counts as together. */
export interface Tolerance {
  readonly mm: number;
  readonly rad: number;
  /** Share of the room along the axis that gears may use. */
  readonly ofRoom: number;
}

/** As well as hands can set it: half a millimetre and a third of a degree; gears with some play still drive. Common practice. */
export const BY_HAND: Tolerance = { mm: 0.5, rad: Math.PI / 540, ofRoom: 1 };
/** Nothing to gain by setting it again: gears may stay off the middle by half of what they may. */
export const FINE: Tolerance = { mm: 0.02, rad: 2e-4, ofRoom: 0.5 };

/** `relative`: end `b`'s part from end `a`'s; `wanted`: where the joint's settings put end `b`. */
export function comesTogether({ joint, pair }: Constraint, relative: Transform, wanted: Transform, { mm, rad, ofRoom }: Tolerance): boolean {
  if (pair !== undefined) {
    const fit = meshFit(joint, pair, relative);
    return Math.abs(fit.gapMm) <= mm && Math.abs(fit.midOffsetMm) <= pair.offsetAllowedMm * ofRoom + mm && length(fit.lean) <= LEAN;
  }
  const { shift, turn, besideMm } = loopMisfit(joint, relative, wanted);
  return length(shift) <= mm && length(turn) <= rad && besideMm <= mm;
}

/** Axes of gears that lean more than three degrees against each other bear on the edge of a face. Common practice. */
const LEAN = Math.sin(Math.PI / 60);
