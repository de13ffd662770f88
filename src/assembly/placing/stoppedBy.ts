import { boundedLeastSquares } from './boundedLeastSquares.ts';
import { type Values, chainOf, settingsWith } from './chain.ts';
import { BY_HAND, type Constraint, comesTogether, evaluated } from './constraints.ts';
import { jointTransform } from './jointFrame.ts';
import type { Variable } from './rigModel.ts';

/** A range that keeps something from coming together. */
export interface StoppedBy {
  readonly variable: Variable;
  /** Where the setting would have to go, beyond its range. */
  readonly wants: number;
}

/** Far enough for any rig; turns by half a turn. */
const UNBOUND_MM = 2000;
const UNBOUND_DEG = 180;

/**
 * Lets the settings of a loop or mesh go beyond their ranges and looks which ones do so. Only those that the file or a range lets move; the
 * method looks near where things stand, so that "nothing found" is no proof that nothing would do.
 */
export function stoppedBy(constraint: Constraint, values: Values): StoppedBy[] {
  const variables = constraint.variables.filter((variable) => values.has(variable));
  if (variables.length === 0) return [];
  const slotOf = new Map(variables.map((variable, at) => [variable, at]));
  const one = evaluated(constraint, values, slotOf);
  const wide = variables.map(({ key }) => (key.endsWith('Deg') ? UNBOUND_DEG : UNBOUND_MM));
  const { x } = boundedLeastSquares({
    start: variables.map((variable) => values.get(variable) ?? variable.start), low: wide.map((by) => -by), high: wide,
    residuals: (at) => {
      const into = new Float64Array(one.size);
      one.write(at, into, 0);
      return into;
    },
  });
  const freed: Values = new Map([...values, ...variables.map((variable, at) => [variable, x[at] as number] as const)]);
  const { joint, way } = constraint;
  const wanted = jointTransform(joint.joint.a.point.kind, settingsWith(joint, freed));
  if (!comesTogether(constraint, chainOf(way, freed, new Map())(new Float64Array(0)), wanted, BY_HAND)) return [];
  return variables.flatMap((variable, at) => {
    const wants = x[at] as number;
    return wants < variable.low - 1e-3 || wants > variable.high + 1e-3 ? [{ variable, wants }] : [];
  });
}
