import { type Rotation, type Transform, add, length, multiply, rotate, scale, subtract, unit } from '../../assembly/placing/Transform.ts';
import type { StiffSwing } from './swingView.ts';

/** The place of a stiff piece's solid, `by` times its swing from rest: turned as a whole, so that it keeps its shape however much it is magnified. */
export function swung({ aboutMm, shiftMm, turnRad }: StiffSwing, place: Transform, by: number): Transform {
  const turn = turnAbout(unit(turnRad, [0, 0, 1]), length(turnRad) * by);
  return { r: multiply(turn, place.r), t: add(add(aboutMm, scale(shiftMm, by)), rotate(turn, subtract(place.t, aboutMm))) };
}

/** Rodrigues' formula: a rotation about an axis of length one. */
function turnAbout([x, y, z]: readonly [number, number, number], angle: number): Rotation {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const v = 1 - c;
  return [c + x * x * v, x * y * v - z * s, x * z * v + y * s, y * x * v + z * s, c + y * y * v, y * z * v - x * s, z * x * v - y * s, z * y * v + x * s, c + z * z * v];
}
