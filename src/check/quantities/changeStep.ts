import type { JointEnd } from '../../assembly/placing/rigJoints.ts';
import type { Assumption } from '../../standards/Assumption.ts';
import type { Amount } from '../../units/print.ts';
import type { Asking } from '../Asking.ts';

/** One thing to do at a change, with the time it takes by the model of `standards/assumptions/swap`; or, `unmet`, one that cannot be done as built. */
export interface ChangeStep {
  readonly kind: 'off' | 'on' | 'open' | 'close' | 'mesh' | 'unmet' | 'focus' | 'move' | 'roll' | 'calibrate' | 'balance' | 'build';
  readonly says: string;
  /** By how much something moves, and which way: "forward on 15 mm rod". */
  readonly by?: Amount;
  readonly way?: string;
  readonly tool?: string;
  readonly minutes: number;
  /** The time within the bounds of the model. */
  readonly low: number;
  readonly high: number;
}

/** The time that one thing takes by the model. */
export function takes(asking: Asking, model: Assumption): Pick<ChangeStep, 'minutes' | 'low' | 'high'> {
  const { value, low, high } = asking.assume(model);
  return { minutes: value, low, high };
}

/** Done along with another, or not at all. */
export const NO_TIME = { minutes: 0, low: 0, high: 0 };

/** The key that a joint wants: as its points say, else a hand. */
export function toolOf(...ends: readonly JointEnd[]): string {
  return ends.map(({ point }) => point.tool).find((tool) => tool !== undefined && tool !== 'hand') ?? 'hand';
}
