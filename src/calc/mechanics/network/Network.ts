import { type Vector, ZERO, cross, minus, plus, times } from '../vector.ts';
import { type Carried, type Wrench, bondWrenches, carriedBy, reaction } from './forces.ts';
import { type Frame, frameOf } from './Frame.ts';
import { type FreeMotion, freeMotionText, namedMotions } from './freeMotion.ts';
import { type Mode, lowestModes } from './modes.ts';
import { Motion } from './Motion.ts';
import type { NetworkLoad, NetworkModel } from './model.ts';
import { type Solvers, solversFor } from './solvers.ts';
import { extent } from './stiffness.ts';

/** A load case and how the network moves under it. */
export interface Answered {
  readonly motion: Motion;
  /** What each spring carries, in its own axes; `undefined` for a rigid one (see `bonds`). */
  readonly springs: () => readonly (Carried | undefined)[];
  readonly beams: () => Carried[];
  /** What each bond does to its `b`, then each rigid spring to its, in the common axes; `undefined` where another way round shares the load. */
  readonly bonds: () => (Wrench | undefined)[];
  /** What the ground gives to all fixed bodies together, about a place. */
  readonly reaction: (placeMm: Vector) => Wrench;
}

/**
 * Rigid bodies held to each other by springs, beams and bonds, factored once for any number of load cases and for its modes.
 * Small displacements; only the loads given act. A model that cannot be built throws `NoAnswer`; one that can be but does not
 * hold together says so in `freeMotions`, and must not be solved.
 */
export class Network {
  /** Empty where everything is held. */
  readonly freeMotions: readonly FreeMotion[];
  private readonly frame: Frame;
  private readonly solvers: Solvers;

  /** `frame`: the model's, where that is at hand. */
  constructor(model: NetworkModel, frame = frameOf(model)) {
    this.frame = frame;
    const { solvers, freeMotions } = solversFor(frame);
    this.solvers = solvers;
    this.freeMotions = freeMotions.length === 0 ? [] : namedMotions(frame, freeMotions, extent(frame));
  }

  get bodyNames(): readonly string[] {
    return this.frame.names;
  }

  /** Moves under one load case. */
  solve(loads: readonly NetworkLoad[]): Answered {
    this.mustHold();
    const motion = new Motion(this.frame, this.solvers.solve(this.loadVector(loads)));
    let carried: (Carried | undefined)[] | undefined;
    return {
      motion,
      springs: () => (carried ??= this.frame.springs.map((element) => element && carriedBy(this.frame, element, motion))),
      beams: () => this.frame.beams.map((element) => carriedBy(this.frame, element, motion)),
      bonds: () => bondWrenches(this.frame, motion, loads),
      reaction: (placeMm) => reaction(this.frame, motion, loads, placeMm),
    };
  }

  /** The lowest modes, by rising frequency. */
  modes(count: number): Mode[] {
    this.mustHold();
    return lowestModes(this.frame, this.solvers, count);
  }

  private mustHold(): void {
    if (this.freeMotions.length > 0) throw new Error(`A network that does not hold together was solved. ${freeMotionText(this.freeMotions)}`);
  }

  private loadVector(loads: readonly NetworkLoad[]): Float64Array {
    const { groups, groupOf } = this.frame.grouping;
    const vector = new Float64Array(groups.length * 6);
    loads.forEach(({ body, forceN = ZERO, momentNm = ZERO, atMm }, i) => {
      const index = this.frame.indexOf(body, `loads/${i}/body`);
      const group = groupOf[index]!;
      if (group < 0) return;
      const place = atMm === undefined ? this.frame.centres[index]! : times(atMm, 1e-3);
      const moment = plus(momentNm, cross(minus(place, groups[group]!.centre), forceN));
      for (let k = 0; k < 3; k++) {
        vector[group * 6 + k]! += forceN[k]!;
        vector[group * 6 + 3 + k]! += moment[k]!;
      }
    });
    return vector;
  }
}
