import type { SettingValues } from './jointFrame.ts';
import { jointTransform, partAt } from './jointFrame.ts';
import type { MeshFit } from './meshFit.ts';
import { type ModelJoint, type RigModel, type TreeStep, type Variable, onlyPushes } from './rigModel.ts';
import { IDENTITY, type Transform, compose, inverse, turnVector } from './Transform.ts';

/** A turn counts as much as the shift it makes at this arm: a radian is 100 mm. */
const ARM_MM = 100;

/** Values of variables, looked up by the variable itself. */
export type Values = ReadonlyMap<Variable, number>;

const NONE: Values = new Map();

export function settingsWith({ fixed, variables }: ModelJoint, values: Values): SettingValues {
  if (variables.length === 0) return fixed;
  const all: SettingValues = { ...fixed };
  for (const variable of variables) all[variable.key] = values.get(variable) ?? variable.start;
  return all;
}

function stepTransform(step: TreeStep, parent: Transform, values: Values): Transform {
  const { joint, frameA, frameB, flipped } = step;
  const across = jointTransform(joint.a.point, settingsWith(step, values));
  return flipped ? partAt(parent, frameB, inverse(across), frameA) : partAt(parent, frameA, across, frameB);
}

/** Where every piece stands for these values. */
export function placePieces(model: RigModel, values: Values): Map<string, Transform> {
  const places = new Map<string, Transform>(model.roots.map((root) => [root, IDENTITY]));
  for (const step of model.tree) places.set(step.child, stepTransform(step, places.get(step.parent) ?? IDENTITY, values));
  return places;
}

/** How far a loop is from closing: the shift (mm) and the turn (rad) of end `b` seen from where end `a` wants it. */
export function loopError(loop: ModelJoint, places: ReadonlyMap<string, Transform>, values: Values): { shift: readonly number[]; turn: readonly number[] } {
  const { joint, frameA, frameB } = loop;
  const wanted = compose(compose(places.get(joint.a.ref) ?? IDENTITY, frameA), jointTransform(joint.a.point, settingsWith(loop, values)));
  const found = compose(places.get(joint.b.ref) ?? IDENTITY, frameB);
  const error = compose(inverse(wanted), found);
  // A support that only pushes touches anywhere on its face and follows any lean: only the gap counts.
  return onlyPushes(loop) ? { shift: [0, 0, error.t[2]], turn: [0, 0, 0] } : { shift: error.t, turn: turnVector(error.r) };
}

/**
 * Residuals of a rig as a function of its variables. Pieces that no variable moves are placed once, and pieces that no loop
 * or mesh hangs on not at all.
 */
export function residualsOf(model: RigModel, meshFit: (mesh: ModelJoint, places: ReadonlyMap<string, Transform>) => MeshFit): (values: Values) => number[] {
  const still = placePieces(model, NONE);
  const moving = new Set<string>();
  const steps = model.tree.filter((step) => {
    const moves = step.variables.length > 0 || moving.has(step.parent);
    if (moves) moving.add(step.child);
    return moves;
  });
  const needed = new Set([...model.loops, ...model.meshes].flatMap(({ joint }) => [joint.a.ref, joint.b.ref]));
  for (const step of steps.toReversed()) if (needed.has(step.child)) needed.add(step.parent);
  const relevant = steps.filter(({ child }) => needed.has(child));
  return (values) => {
    const places = new Map(still);
    for (const step of relevant) places.set(step.child, stepTransform(step, places.get(step.parent) ?? IDENTITY, values));
    return [
      ...model.loops.flatMap((loop) => {
        const { shift, turn } = loopError(loop, places, values);
        return [...shift, ...turn.map((one) => one * ARM_MM)];
      }),
      ...model.meshes.flatMap((mesh) => {
        const fit = meshFit(mesh, places);
        return [fit.gapMm, fit.offsetMm, fit.leanRad * ARM_MM];
      }),
    ];
  };
}
