import type { Point } from '../../shoot/schema/mechanics.ts';
import type { SettingKey } from '../mates.ts';
import { type SettingValues, jointTransform } from './jointFrame.ts';
import type { ModelJoint, RigModel, TreeStep, Variable } from './rigModel.ts';
import { IDENTITY, type Transform, compose, inverse } from './Transform.ts';

/** Values of variables; a variable that is not in it stands at its start. */
export type Values = ReadonlyMap<Variable, number>;

/** What a joint's settings are for these values, seen from end `a`. */
export function settingsWith({ fixed, variables, turned }: ModelJoint, values: Values): SettingValues {
  if (variables.length === 0) return fixed;
  const all: SettingValues = { ...fixed };
  for (const variable of variables) {
    const value = values.get(variable) ?? variable.start;
    all[variable.key] = turned.has(variable.key) ? -value : value;
  }
  return all;
}

/** From the part at end `a` to the part at end `b`. */
export function across(by: ModelJoint, values: Values): Transform {
  return compose(compose(by.frameA, jointTransform(by.joint.a.point.kind, settingsWith(by, values))), by.backB);
}

/** From parent to child. */
export const stepTransform = (step: TreeStep, values: Values): Transform => (step.flipped ? inverse(across(step, values)) : across(step, values));

/** Where every piece stands for these values, in the frame of its build's root; the root where it is put. */
export function placePieces(model: RigModel, values: Values, rootAt: Transform = IDENTITY): Map<string, Transform> {
  const places = new Map<string, Transform>(model.roots.map((root) => [root, rootAt]));
  for (const step of model.tree) places.set(step.child, compose(places.get(step.parent) ?? IDENTITY, stepTransform(step, values)));
  return places;
}

/** The steps from one piece to another through the tree: up the one side, down the other. */
export interface Way {
  readonly step: TreeStep;
  readonly up: boolean;
}

export function wayBetween(model: RigModel, from: string, to: string): readonly Way[] {
  const above = (ref: string): TreeStep[] => {
    const steps: TreeStep[] = [];
    for (let step = model.stepTo.get(ref); step !== undefined; step = model.stepTo.get(step.parent)) steps.push(step);
    return steps;
  };
  const [up, down] = [above(from), above(to)];
  while (up.length > 0 && up.at(-1) === down.at(-1)) {
    up.pop();
    down.pop();
  }
  return [...up.map((step) => ({ step, up: true })), ...down.toReversed().map((step) => ({ step, up: false }))];
}

/** Evaluates a chain of joints for the solver's numbers. */
export type Chain = (x: Float64Array) => Transform;

interface Moving {
  readonly kind: Point['kind'];
  readonly fixed: SettingValues;
  readonly slots: readonly { readonly setting: SettingKey; readonly at: number; readonly sign: 1 | -1 }[];
  readonly inverted: boolean;
  /** What comes after it, up to the next joint that moves. */
  readonly after: Transform;
}

/** A way with all that stands still folded together; `slotOf` gives a variable's place in the solver's numbers, if it is one of them. */
export function chainOf(way: readonly Way[], values: Values, slotOf: ReadonlyMap<Variable, number>): Chain {
  const pieces: (Transform | Omit<Moving, 'after'>)[] = way.flatMap(({ step: by, up }) => {
    const inverted = by.flipped !== up;
    const slots = slotsOf(by, slotOf);
    if (slots.length === 0) return [inverted ? inverse(across(by, values)) : across(by, values)];
    const moving = { kind: by.joint.a.point.kind, fixed: settingsWith(by, values), slots, inverted };
    return inverted ? [by.frameB, moving, by.backA] : [by.frameA, moving, by.backB];
  });
  let first = IDENTITY;
  const moving: Moving[] = [];
  for (const one of pieces) {
    const last = moving.at(-1);
    if (!('r' in one)) moving.push({ ...one, after: IDENTITY });
    else if (last === undefined) first = compose(first, one);
    else moving[moving.length - 1] = { ...last, after: compose(last.after, one) };
  }
  return (x) => {
    let at = first;
    for (const one of moving) {
      const joint = jointTransform(one.kind, settingsAt(one, x));
      at = compose(compose(at, one.inverted ? inverse(joint) : joint), one.after);
    }
    return at;
  };
}

/** Where a joint's variables stand in the solver's numbers. */
export function slotsOf({ variables, turned }: ModelJoint, slotOf: ReadonlyMap<Variable, number>): Moving['slots'] {
  return variables.flatMap((variable) => {
    const at = slotOf.get(variable);
    return at === undefined ? [] : [{ setting: variable.key, at, sign: turned.has(variable.key) ? (-1 as const) : (1 as const) }];
  });
}

export function settingsAt({ fixed, slots }: Pick<Moving, 'fixed' | 'slots'>, x: Float64Array): SettingValues {
  const all: SettingValues = { ...fixed };
  for (const { setting, at, sign } of slots) all[setting] = sign * (x[at] as number);
  return all;
}
