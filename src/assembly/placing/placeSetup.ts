import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { SettingKey } from '../mates.ts';
import { opticalPath } from '../opticalPath.ts';
import { type Values, placePieces, settingsWith } from './chain.ts';
import { BY_HAND, type Constraint, type MeshFit, comesTogether, constraintsOf, loopMisfit, meshFit } from './constraints.ts';
import { type Gear, type GearPair, gearOf } from './gears.ts';
import { jointTransform } from './jointFrame.ts';
import { type PlacedPart, placedParts } from './PlacedPart.ts';
import { type DanglingJoint, type RigJoint, rigJoints } from './rigJoints.ts';
import { type BeyondRange, type ModelMesh, type RigModel, type Unplaced, type Variable, rigModel } from './rigModel.ts';
import { solvedSettings } from './solveSettings.ts';
import { type StoppedBy, stoppedBy } from './stoppedBy.ts';
import { IDENTITY, type Transform, compose, inverse, length } from './Transform.ts';

/** A setting that was found, in the file's own sense. */
export interface SolvedSetting {
  readonly joint: RigJoint;
  readonly key: SettingKey;
  /** `free`: nothing states it, and it had to give way. */
  readonly scope: Variable['scope'];
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Whether its range is entered; where not, it was looked for within reason. */
  readonly rangeKnown: boolean;
  /** The end of its range that it stands at, if at one. */
  readonly atLimit: 'low' | 'high' | undefined;
}

/** What a loop and a mesh have in common. */
interface Joined {
  readonly joint: RigJoint;
  /** Whether anything that is to be found could move one end against the other. */
  readonly canMove: boolean;
  /** Where it does not come together: the ranges that stop it. Empty: no range does, or nothing was found beyond them either. */
  readonly stoppedBy: readonly StoppedBy[];
}

/** A joint that closes a loop, and how well it does. */
export interface LoopResult extends Joined {
  readonly misfitMm: number;
  readonly misfitDeg: number;
  readonly closes: boolean;
  /** Of a support that only pushes: the gap under it (negative: it presses), and how far it stands beside its face. */
  readonly gapMm: number | undefined;
  readonly besideMm: number;
}

/** Two gears, and how they stand to each other with focus at infinity. */
export interface MeshResult extends Joined, Omit<MeshFit, 'axesMm' | 'lean'> {
  readonly gearA: Gear | 'none';
  readonly gearB: Gear | 'none';
  readonly pair: GearPair | undefined;
  /** Between the axes, as they stand. */
  readonly centreDistanceMm: number;
  readonly leanRad: number;
  readonly meets: boolean;
}

/**
 * A setup placed for one glass. Everything stands in the frame of its build: the camera's with its origin where the axis meets the sensor
 * plane, +X camera left, +Y up, +Z to the subject (of a body that is placed, else of the root); a station's in that of its root. Focus at infinity.
 */
export interface Placement {
  readonly setup: string;
  readonly glass: string;
  /** Where each part's own frame stands, by `build/piece`. */
  readonly places: ReadonlyMap<string, Transform>;
  /** The same with name, shape and points; packs on a plate as well, by `build/piece#1`. */
  readonly parts: ReadonlyMap<string, PlacedPart>;
  /** The tray: what is not placed, and why. */
  readonly unplaced: readonly Unplaced[];
  readonly settings: readonly SolvedSetting[];
  readonly loops: readonly LoopResult[];
  readonly meshes: readonly MeshResult[];
  /** Settings that the file states beyond the range of their points. */
  readonly beyond: readonly BeyondRange[];
  /** Joints of the file that do not arise with this glass. */
  readonly dangling: readonly DanglingJoint[];
  /** The steps that put each piece where it is, roots first. */
  readonly model: RigModel;
  /** What was found for each variable of the model; the others stand at their start. */
  readonly values: Values;
}

/** Where every piece of a setup stands with one of its glasses on. Shared settings are found over the whole set. */
export function placeSetup(ledger: Ledger, setup: string, glass: string): Placement {
  return ledger.cell(`placement|${setup}|${glass}`, () => {
    const model = rigModel(ledger, setup, glass);
    const { values } = solvedSettings(ledger, setup, glass);
    const places = inBodyFrame(placePieces(model, values), model, opticalPath(ledger, setup, glass).body?.ref);
    const settings = model.variables.filter((variable) => variable.scope !== 'free' || values.has(variable)).map((variable) => solvedSetting(variable, values));
    const constraints = constraintsOf(model);
    return {
      setup, glass, places, settings, model, values,
      parts: placedParts(ledger, setup, glass, places),
      unplaced: model.unplaced,
      loops: constraints.filter(({ pair }) => pair === undefined).map((loop) => loopResult(loop, places, values)),
      meshes: model.meshes.map((mesh) => meshResult(mesh, constraints.find(({ joint }) => joint === mesh), places, values)),
      beyond: [...model.tree, ...model.loops, ...model.meshes].flatMap(({ beyond }) => beyond),
      dangling: rigJoints(ledger, setup, glass).dangling,
    };
  });
}

/** The camera's build as its body sees it, wherever placing starts from. */
function inBodyFrame(places: Map<string, Transform>, model: RigModel, body: string | undefined): Map<string, Transform> {
  const stands = body === undefined || model.roots.includes(body) ? undefined : places.get(body);
  if (body === undefined || stands === undefined) return places;
  const [build, home] = [`${body.split('/')[0] ?? ''}/`, inverse(stands)];
  for (const [ref, place] of places) if (ref.startsWith(build)) places.set(ref, ref === body ? IDENTITY : compose(home, place));
  return places;
}

function solvedSetting(variable: Variable, values: Values): SolvedSetting {
  const { joint, key, scope, low, high, rangeKnown } = variable;
  const value = values.get(variable) ?? variable.start;
  const near = 1e-6 * Math.max(1, high - low);
  return { joint, key, scope, value, low, high, rangeKnown, atLimit: value <= low + near ? 'low' : value >= high - near ? 'high' : undefined };
}

/** End `b`'s part as end `a`'s part sees it, and where the joint's settings would put end `b`. */
function asItStands({ joint }: Constraint, places: ReadonlyMap<string, Transform>, values: Values): { relative: Transform; wanted: Transform } {
  const { a, b } = joint.joint;
  return {
    relative: compose(inverse(places.get(a.ref) ?? IDENTITY), places.get(b.ref) ?? IDENTITY),
    wanted: jointTransform(a.point.kind, settingsWith(joint, values)),
  };
}

function loopResult(loop: Constraint, places: ReadonlyMap<string, Transform>, values: Values): LoopResult {
  const { relative, wanted } = asItStands(loop, places, values);
  const closes = comesTogether(loop, relative, wanted, BY_HAND);
  const { shift, turn, besideMm, pushes } = loopMisfit(loop.joint, relative, wanted);
  return {
    joint: loop.joint.joint, closes, besideMm, misfitMm: Math.hypot(length(shift), besideMm), misfitDeg: (length(turn) * 180) / Math.PI, gapMm: pushes ? shift[2] : undefined,
    canMove: loop.variables.length > 0, stoppedBy: closes ? [] : stoppedBy(loop, values),
  };
}

function meshResult(mesh: ModelMesh, constraint: Constraint | undefined, places: ReadonlyMap<string, Transform>, values: Values): MeshResult {
  const { joint } = mesh;
  const [gearA, gearB] = [gearOf(joint.a.piece) ?? ('none' as const), gearOf(joint.b.piece) ?? ('none' as const)];
  if (constraint?.pair === undefined) {
    return { joint, gearA, gearB, pair: undefined, gapMm: Infinity, offsetMm: 0, midOffsetMm: 0, leanRad: 0, centreDistanceMm: 0, meets: false, canMove: false, stoppedBy: [] };
  }
  const { relative, wanted } = asItStands(constraint, places, values);
  const { axesMm, lean, ...fit } = meshFit(constraint.joint, constraint.pair, relative);
  const meets = comesTogether(constraint, relative, wanted, BY_HAND);
  return {
    joint, gearA, gearB, pair: constraint.pair, ...fit, centreDistanceMm: axesMm, leanRad: Math.asin(Math.min(1, length(lean))), meets,
    canMove: constraint.variables.length > 0, stoppedBy: meets ? [] : stoppedBy(constraint, values),
  };
}
