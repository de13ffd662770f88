import { type Tensor, type Vector, ZERO, along, dot, minus, outOf, plus, times } from './vector.ts';

/** A body as the laws of motion see it: mass, centre, and inertia about that centre in the common axes. */
export interface MassProperties {
  readonly massG: number;
  readonly centreMm: Vector;
  /** Products of inertia negative. */
  readonly inertiaKgM2: Tensor;
}

export const NO_INERTIA: Tensor = [ZERO, ZERO, ZERO];

/** Several bodies taken as one. Without mass among them the centre is the middle of theirs. */
export function composite(bodies: readonly MassProperties[]): MassProperties {
  const massG = bodies.reduce((sum, body) => sum + body.massG, 0);
  const weight = massG > 0 ? (body: MassProperties) => body.massG / massG : () => 1 / bodies.length;
  const centreMm = bodies.reduce<Vector>((sum, body) => plus(sum, times(body.centreMm, weight(body))), ZERO);
  return { massG, centreMm, inertiaKgM2: inertiaOfAll(bodies, centreMm) };
}

/** The sum of `inertiaAbout`, in plain steps: every rig has it of every body. */
function inertiaOfAll(bodies: readonly MassProperties[], pointMm: Vector): Tensor {
  const sum = new Float64Array(9);
  for (const { massG, centreMm, inertiaKgM2 } of bodies) {
    const d = times(minus(centreMm, pointMm), 1e-3);
    const massKg = massG * 1e-3;
    const whole = massKg * dot(d, d);
    for (let i = 0; i < 3; i++) {
      const row = inertiaKgM2[i as 0 | 1 | 2];
      for (let j = 0; j < 3; j++) sum[i * 3 + j]! += row[j]! + ((i === j ? whole : 0) - d[j]! * (massKg * d[i]!));
    }
  }
  return [[sum[0]!, sum[1]!, sum[2]!], [sum[3]!, sum[4]!, sum[5]!], [sum[6]!, sum[7]!, sum[8]!]];
}

/** Inertia about another point: Steiner's theorem, J + m(d²·1 − d⊗d). */
export function inertiaAbout({ massG, centreMm, inertiaKgM2 }: MassProperties, pointMm: Vector): Tensor {
  const d = times(minus(centreMm, pointMm), 1e-3);
  const massKg = massG * 1e-3;
  const row = (i: 0 | 1 | 2): Vector => minus(times(axis(i), massKg * dot(d, d)), times(d, massKg * d[i]));
  return addTensors(inertiaKgM2, [row(0), row(1), row(2)]);
}

/** A solid box along the common axes, about its centre: m(b² + c²)/12. */
export function boxInertia(massG: number, [x, y, z]: Vector): Tensor {
  const each = (massG * 1e-9) / 12;
  return diagonal(each * (y * y + z * z), each * (z * z + x * x), each * (x * x + y * y));
}

/** A tube along one of the axes, about its centre; a bore of 0 makes it a bar. m(R² + r²)/2 along, m(3(R² + r²) + l²)/12 across. */
export function tubeInertia(
  massG: number, { diameterMm, boreMm, lengthMm, along }: { diameterMm: number; boreMm: number; lengthMm: number; along: 'x' | 'y' | 'z' },
): Tensor {
  const radii = (diameterMm * diameterMm + boreMm * boreMm) / 4;
  const lengthwise = (massG * 1e-9 * radii) / 2;
  const across = (massG * 1e-9 * (3 * radii + lengthMm * lengthMm)) / 12;
  return diagonal(along === 'x' ? lengthwise : across, along === 'y' ? lengthwise : across, along === 'z' ? lengthwise : across);
}

/** A tensor in a body's own axes, seen in the common ones; `axes` are the body's x, y, z as rows. */
export function turned(tensor: Tensor, axes: Tensor): Tensor {
  const image = (v: Vector): Vector => {
    const own = along(axes, v);
    return outOf(axes, [dot(tensor[0], own), dot(tensor[1], own), dot(tensor[2], own)]);
  };
  const [x, y, z] = [image(axis(0)), image(axis(1)), image(axis(2))];
  // Columns; made symmetric, which rounding may have spoilt.
  return [[x[0], (x[1] + y[0]) / 2, (x[2] + z[0]) / 2], [(x[1] + y[0]) / 2, y[1], (y[2] + z[1]) / 2], [(x[2] + z[0]) / 2, (y[2] + z[1]) / 2, z[2]]];
}

export const addTensors = (a: Tensor, b: Tensor): Tensor => [plus(a[0], b[0]), plus(a[1], b[1]), plus(a[2], b[2])];

const diagonal = (x: number, y: number, z: number): Tensor => [[x, 0, 0], [0, y, 0], [0, 0, z]];
const axis = (i: 0 | 1 | 2): Vector => [i === 0 ? 1 : 0, i === 1 ? 1 : 0, i === 2 ? 1 : 0];
