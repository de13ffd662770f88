import { STIFFNESS_KEYS, type NetworkBeam, type NetworkSpring } from './model.ts';
import { UNIT_AXES, type Tensor, type Vector, cross, dot, length, minus, times } from '../vector.ts';

/**
 * Something springy between two bodies: where it holds each, and its stiffness on the motion of those two places, in its own
 * axes: twelve unknowns, shift and turn of the first place, then of the second. In metres, newtons and radians.
 */
export type Element = SpringElement | BeamElement;

interface Between {
  readonly a: number;
  readonly b: number;
  readonly placeA: Vector;
  readonly placeB: Vector;
  readonly axes: Tensor;
}

export interface SpringElement extends Between {
  /** Its six stiffnesses, each on the motion of the second place less that of the first. */
  readonly ways: Float64Array;
}

export interface BeamElement extends Between {
  readonly ways?: undefined;
  /** 12 × 12, row by row. */
  readonly stiffness: Float64Array;
}

const SIZE = 12;
/** What makes newtons per metre, or newton metres per radian, of each stiffness. */
const TO_SI = STIFFNESS_KEYS.map((key) => (key.endsWith('NPerMm') ? 1000 : 1));

/** `axes` are those of the spring made exactly square, so that turning a body as a whole strains nothing. */
export function springElement({ atMm, stiffness }: NetworkSpring, axes: Tensor = UNIT_AXES, a: number, b: number): SpringElement {
  const place = times(atMm, 1e-3);
  const ways = new Float64Array(6);
  for (let way = 0; way < 6; way++) ways[way] = stiffness[STIFFNESS_KEYS[way]!] * TO_SI[way]!;
  return { a, b, placeA: place, placeB: place, axes, ways };
}

/** A straight bar in space: stretch, twist, and bending in two planes, with shear where an area for it is given. */
export function beamElement(beam: NetworkBeam, a: number, b: number): BeamElement {
  const placeA = times(beam.fromMm, 1e-3);
  const placeB = times(beam.toMm, 1e-3);
  const span = minus(placeB, placeA);
  const l = length(span);
  const [young, shear] = [beam.youngGPa * 1e9, beam.shearGPa * 1e9];
  const stiffness = new Float64Array(SIZE * SIZE);
  const set = (row: number, column: number, value: number) => {
    stiffness[row * SIZE + column] = value;
    stiffness[column * SIZE + row] = value;
  };
  const pair = (way: number, value: number) => {
    set(way, way, value);
    set(way + 6, way + 6, value);
    set(way, way + 6, -value);
  };
  pair(0, (young * beam.areaMm2 * 1e-6) / l);
  pair(3, (shear * beam.jMm4 * 1e-12) / l);
  const shearStiffness = beam.shearAreaMm2 === undefined ? Infinity : shear * beam.shearAreaMm2 * 1e-6;
  // A turn about +z lifts the far end along +y; a turn about +y lowers it along +z: hence the sign.
  bend(set, { shift: 1, turn: 5, sign: 1, rigidity: young * beam.izMm4 * 1e-12, l, shearStiffness });
  bend(set, { shift: 2, turn: 4, sign: -1, rigidity: young * beam.iyMm4 * 1e-12, l, shearStiffness });
  return { a, b, placeA, placeB, axes: beamAxes(span, beam.localY), stiffness };
}

interface Bending {
  readonly shift: number;
  readonly turn: number;
  readonly sign: number;
  readonly rigidity: number;
  readonly l: number;
  readonly shearStiffness: number;
}

/** The slope-deflection coefficients, Φ = 12EI/(G·As·L²) for shear (Przemieniecki, Theory of Matrix Structural Analysis, 1968). */
function bend(set: (row: number, column: number, value: number) => void, { shift, turn, sign, rigidity, l, shearStiffness }: Bending): void {
  const slack = (12 * rigidity) / (shearStiffness * l * l);
  const k = rigidity / (1 + slack);
  const [far, farTurn] = [shift + 6, turn + 6];
  set(shift, shift, (12 * k) / l ** 3);
  set(far, far, (12 * k) / l ** 3);
  set(shift, far, (-12 * k) / l ** 3);
  set(turn, turn, ((4 + slack) * k) / l);
  set(farTurn, farTurn, ((4 + slack) * k) / l);
  set(turn, farTurn, ((2 - slack) * k) / l);
  const lever = (sign * 6 * k) / (l * l);
  set(shift, turn, lever);
  set(shift, farTurn, lever);
  set(far, turn, -lever);
  set(far, farTurn, -lever);
}

/** Local x along the bar, local y as near the wish as square to it allows; any square direction where no wish is stated. */
function beamAxes(span: Vector, localY: Vector | undefined): Tensor {
  const x = times(span, 1 / length(span));
  const wish = localY ?? UNIT_AXES[leastAligned(x)]!;
  const across = minus(wish, times(x, dot(x, wish)));
  const y = times(across, 1 / length(across));
  return [x, y, cross(x, y)];
}

function leastAligned(x: Vector): 0 | 1 | 2 {
  const [i, j, k] = [Math.abs(x[0]), Math.abs(x[1]), Math.abs(x[2])];
  if (i <= j && i <= k) return 0;
  return j <= k ? 1 : 2;
}
