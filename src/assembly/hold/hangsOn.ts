import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import type { RigJoint } from '../placing/rigJoints.ts';
import { carriedOn } from './carriedOn.ts';
import { stepsFrom } from './stepsFrom.ts';

/** Pieces whose weight comes to bear on a joint: all that its carried end is joined to otherwise. Where that leads round to the ground, each of them may. */
export function hangsOn(ledger: Ledger, setup: string, glass: string, joint: Pick<RigJoint, 'a' | 'b' | 'path'>): ReadonlySet<string> {
  const { model } = placeSetup(ledger, setup, glass);
  const others = [...model.tree, ...model.loops].filter((one) => one.joint.path !== joint.path).map(({ joint: { a, b } }) => [a.ref, b.ref] as const);
  return new Set(stepsFrom([carriedOn(ledger, setup, glass, joint).carried.ref], others).keys());
}
