import { NoAnswer } from '../../calculator.ts';
import { NO_INERTIA, composite } from '../massProperties.ts';
import { solveTensor } from '../solveTensor.ts';
import { type Tensor, type Vector, ZERO, cross, dot, minus, plus, times } from '../vector.ts';
import { type Frame, frameOf, holding } from './Frame.ts';
import type { FreeMotion } from './freeMotion.ts';
import { type Mode, lowestModes } from './modes.ts';
import type { NetworkBody, NetworkLoad, NetworkModel } from './model.ts';
import { type Answered, Network } from './Network.ts';
import { solversFor } from './solvers.ts';

/** Added to every ω² so that drifting as a whole has stiffness too: that of 1 Hz, below any wobble that is asked about. */
const LIFT = (2 * Math.PI) ** 2;
const DRIFTS = 6;

/**
 * A network that stands on nothing, as one held loosely in the hands: loads that do not balance set it moving as a whole, and its
 * own inertia bears them (inertia relief). Only how bodies move against each other has meaning: `motion.relative`.
 */
export class FloatingNetwork {
  /** Bodies that hang loose from the rest; empty where all hangs together. */
  readonly freeMotions: readonly FreeMotion[];
  private readonly frame: Frame;
  private readonly bodies: readonly NetworkBody[];
  /** The same with its heaviest body held, which bears nothing once the loads are balanced. */
  private readonly held: Network;

  constructor(model: NetworkModel) {
    const fixed = model.bodies.findIndex((body) => body.fixed === true);
    if (fixed >= 0) throw new NoAnswer(`bodies/${fixed}/fixed`, 'A network that floats cannot have a fixed body. Free it.');
    this.frame = frameOf(model);
    this.bodies = model.bodies;
    const heaviest = model.bodies.reduce((best, body) => ((body.massG ?? 0) > (best.massG ?? 0) ? body : best));
    const held = model.bodies.map((body) => (body === heaviest ? { ...body, fixed: true } : body));
    this.held = new Network({ ...model, bodies: held }, holding(this.frame, held));
    this.freeMotions = this.held.freeMotions;
  }

  /** Under one load case, with the inertia of every body against it. */
  solve(loads: readonly NetworkLoad[]): Answered {
    return this.held.solve([...loads, ...this.inertiaLoads(loads)]);
  }

  /** The lowest modes in which bodies move against each other; drifting as a whole is left out. */
  modes(count: number): Mode[] {
    return lowestModes(this.frame, solversFor(this.frame, LIFT).solvers, count + DRIFTS).slice(DRIFTS);
  }

  private inertiaLoads(loads: readonly NetworkLoad[]): NetworkLoad[] {
    const parts = this.bodies.map(({ massG = 0, centreMm, inertiaKgM2 = NO_INERTIA }) => ({ massG, centreMm, inertiaKgM2 }));
    const whole = composite(parts);
    const centre = whole.centreMm;
    const leverM = (place: Vector) => times(minus(place, centre), 1e-3);
    const force = loads.reduce((sum, load) => plus(sum, load.forceN ?? ZERO), ZERO);
    const moment = loads.reduce((sum, { body, forceN = ZERO, momentNm = ZERO, atMm }, i) => {
      const place = atMm ?? this.bodies[this.frame.indexOf(body, `loads/${i}/body`)]!.centreMm;
      return plus(plus(sum, momentNm), cross(leverM(place), forceN));
    }, ZERO);
    const shove = times(force, -1000 / whole.massG);
    const turning = solveTensor(whole.inertiaKgM2, moment);
    if (turning === undefined) throw new NoAnswer('bodies', 'These bodies have no inertia about some axis, so nothing bears a moment about it. Give them mass and inertia.');
    const spin = times(turning, -1);
    return this.bodies.map(({ name }, i) => ({
      body: name,
      forceN: times(plus(shove, cross(spin, leverM(parts[i]!.centreMm))), parts[i]!.massG * 1e-3),
      momentNm: timesTensor(parts[i]!.inertiaKgM2, spin),
    }));
  }
}

const timesTensor = (tensor: Tensor, v: Vector): Vector => [dot(tensor[0], v), dot(tensor[1], v), dot(tensor[2], v)];
