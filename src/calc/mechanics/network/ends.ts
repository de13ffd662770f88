import { type Vector, cross, minus } from '../vector.ts';
import type { Element } from './element.ts';
import type { Frame } from './Frame.ts';

/**
 * How the shift and turn of an element's end, in the element's own axes, follow from the six unknowns of the body that holds
 * it: 6 × 6, row by row. `undefined` where that body is fixed.
 */
export interface End {
  readonly group: number;
  readonly follow: Float64Array;
}

export function endsOf(frame: Frame, element: Element): readonly [End | undefined, End | undefined] {
  return [endOf(frame, element, element.a, element.placeA), endOf(frame, element, element.b, element.placeB)];
}

function endOf(frame: Frame, element: Element, body: number, place: Vector): End | undefined {
  const group = frame.grouping.groupOf[body]!;
  if (group < 0) return undefined;
  const lever = minus(place, frame.grouping.groups[group]!.centre);
  const follow = new Float64Array(36);
  element.axes.forEach((axis, i) => {
    // axis·(u + θ × r) = axis·u + (r × axis)·θ
    const arm = cross(lever, axis);
    for (let k = 0; k < 3; k++) {
      follow[i * 6 + k] = axis[k]!;
      follow[i * 6 + 3 + k] = arm[k]!;
      follow[(i + 3) * 6 + 3 + k] = axis[k]!;
    }
  });
  return { group, follow };
}

/** Shift and turn of both ends in the element's own axes, from the unknowns of the groups, six each in the order of the groups. */
export function endMotion(frame: Frame, element: Element, unknowns: Float64Array): Float64Array {
  const motion = new Float64Array(12);
  endsOf(frame, element).forEach((end, side) => {
    if (end === undefined) return;
    for (let i = 0; i < 6; i++) {
      let sum = 0;
      for (let k = 0; k < 6; k++) sum += end.follow[i * 6 + k]! * unknowns[end.group * 6 + k]!;
      motion[side * 6 + i] = sum;
    }
  });
  return motion;
}
