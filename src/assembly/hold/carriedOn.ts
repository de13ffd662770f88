import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import type { JointEnd, RigJoint } from '../placing/rigJoints.ts';
import { standsOn } from './standsOn.ts';
import { stepsFrom } from './stepsFrom.ts';

export interface CarriedOn {
  readonly carried: JointEnd;
  readonly carrier: JointEnd;
}

/** Which end of a joint carries the other: the one nearer, joint by joint, to what the build stands on. However the joint is written. */
export function carriedOn(ledger: Ledger, setup: string, glass: string, { a, b }: Pick<RigJoint, 'a' | 'b'>): CarriedOn {
  const steps = stepsFromGround(ledger, setup, glass, a.piece.build);
  const far = ({ ref }: JointEnd) => steps.get(ref) ?? Infinity;
  return far(b) < far(a) ? { carried: a, carrier: b } : { carried: b, carrier: a };
}

/** "Cage on Baseplate". */
export function carriedWords(ledger: Ledger, setup: string, glass: string, joint: Pick<RigJoint, 'a' | 'b'>): string {
  const { carried, carrier } = carriedOn(ledger, setup, glass, joint);
  return `${carried.piece.name} on ${carrier.piece.name}`;
}

function stepsFromGround(ledger: Ledger, setup: string, glass: string, build: string): ReadonlyMap<string, number> {
  return ledger.cell(`steps from the ground|${setup}|${glass}|${build}`, () => {
    const { model } = placeSetup(ledger, setup, glass);
    const links = [...model.tree, ...model.loops].map(({ joint: { a, b } }) => [a.ref, b.ref] as const);
    return stepsFrom([standsOn(ledger, setup, glass, build).anchor], links);
  });
}
