import { type Vector, ZERO, cross, minus, plus, times } from '../vector.ts';
import type { Frame } from './Frame.ts';

export interface BodyMotion {
  readonly name: string;
  /** Of its centre. */
  readonly shiftMm: Vector;
  /** A small rotation: its axis, and its size in degrees. */
  readonly turnDeg: Vector;
}

const DEG = 180 / Math.PI;

/** How every body of a network moves, under loads or in a mode. */
export class Motion {
  private readonly frame: Frame;
  /** Shift in metres and turn in radians of each group at its centre, six each. */
  readonly unknowns: Float64Array;

  constructor(frame: Frame, unknowns: Float64Array) {
    this.frame = frame;
    this.unknowns = unknowns;
  }

  /** Every body, in the order of the model; fixed ones with zeros. */
  bodies(): BodyMotion[] {
    return this.frame.names.map((name, i) => ({
      name, shiftMm: times(this.shiftOf(i, this.frame.centres[i]!), 1e3), turnDeg: times(this.turnOf(i), DEG),
    }));
  }

  /** Shift of a place that rides with a body, mm. */
  shiftAt(body: string, placeMm: Vector): Vector {
    return times(this.shiftOf(this.frame.indexOf(body, ''), times(placeMm, 1e-3)), 1e3);
  }

  turnDegOf(body: string): Vector {
    return times(this.turnOf(this.frame.indexOf(body, '')), DEG);
  }

  /** How one body moves as seen from another: of a lens, at its mount, as seen from the sensor. */
  relative(
    { of, to, atMm }: { readonly of: string; readonly to: string; readonly atMm: Vector },
  ): { readonly shiftMm: Vector; readonly turnDeg: Vector } {
    return { shiftMm: minus(this.shiftAt(of, atMm), this.shiftAt(to, atMm)), turnDeg: minus(this.turnDegOf(of), this.turnDegOf(to)) };
  }

  private turnOf(body: number): Vector {
    const group = this.frame.grouping.groupOf[body]!;
    return group < 0 ? ZERO : this.triple(group * 6 + 3);
  }

  private shiftOf(body: number, place: Vector): Vector {
    const group = this.frame.grouping.groupOf[body]!;
    if (group < 0) return ZERO;
    const lever = minus(place, this.frame.grouping.groups[group]!.centre);
    return plus(this.triple(group * 6), cross(this.triple(group * 6 + 3), lever));
  }

  private triple(from: number): Vector {
    return [this.unknowns[from]!, this.unknowns[from + 1]!, this.unknowns[from + 2]!];
  }
}
