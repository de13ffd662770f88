import { type Tensor, type Vector, cross, minus } from '../vector.ts';
import type { Element } from './element.ts';
import type { Frame } from './Frame.ts';

/**
 * How the shift and turn of an element's end, in the element's own axes, follow from the six unknowns of the body that holds
 * it, axis·(u + θ × r) = axis·u + (r × axis)·θ: 6 × 6, row by row, written into `follow`. Gives the group of that body, −1 where
 * it is fixed.
 */
export function followEnd(frame: Frame, { axes }: Element, body: number, place: Vector, follow: Float64Array): number {
  const group = frame.grouping.groupOf[body]!;
  if (group < 0) return group;
  const lever = minus(place, frame.grouping.groups[group]!.centre);
  for (let i = 0; i < 3; i++) {
    const axis = axes[i as 0 | 1 | 2];
    const arm = cross(lever, axis);
    for (let k = 0; k < 3; k++) {
      follow[i * 6 + k] = axis[k]!;
      follow[i * 6 + 3 + k] = arm[k]!;
      follow[(i + 3) * 6 + k] = 0;
      follow[(i + 3) * 6 + 3 + k] = axis[k]!;
    }
  }
  return group;
}

/** Shift and turn of both ends in the element's own axes, from the unknowns of the groups, six each in the order of the groups. */
export function endMotion(frame: Frame, { axes, a, b, placeA, placeB }: Element, unknowns: Float64Array): Float64Array {
  const motion = new Float64Array(12);
  moveEnd(frame, axes, a, placeA, unknowns, motion, 0);
  moveEnd(frame, axes, b, placeB, unknowns, motion, 6);
  return motion;
}

function moveEnd({ grouping }: Frame, axes: Tensor, body: number, place: Vector, unknowns: Float64Array, motion: Float64Array, from: number): void {
  const group = grouping.groupOf[body]!;
  if (group < 0) return;
  const lever = minus(place, grouping.groups[group]!.centre);
  const at = group * 6;
  for (let i = 0; i < 3; i++) {
    const axis = axes[i as 0 | 1 | 2];
    const arm = cross(lever, axis);
    let shift = 0;
    let turn = 0;
    for (let k = 0; k < 3; k++) shift += axis[k]! * unknowns[at + k]!;
    for (let k = 0; k < 3; k++) {
      shift += arm[k]! * unknowns[at + 3 + k]!;
      turn += axis[k]! * unknowns[at + 3 + k]!;
    }
    motion[from + i] = shift;
    motion[from + 3 + i] = turn;
  }
}
