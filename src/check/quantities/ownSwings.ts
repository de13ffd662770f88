import type { JointHold } from '../../assembly/hold/jointHold.ts';
import { modesOf, swungRig } from '../../assembly/hold/rigModes.ts';
import type { RigNetwork, Variation } from '../../assembly/hold/rigNetwork.ts';
import type { Mode } from '../../calc/mechanics/network/modes.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { SetupGlass } from '../subjects.ts';

/** A way in which a rig swings by itself, and how much of the swing's energy each of its joints holds, the most first. */
export interface OwnSwing {
  readonly mode: Mode;
  readonly shares: readonly { readonly spring: JointHold | 'ground'; readonly share: number }[];
}

/**
 * The lowest swings of the rig itself, slowest first. A person or a head that gives under the whole of it is no weakness of the rig: it is held
 * fast there. Empty where nothing is placed or some pieces move freely.
 */
export function ownSwings(ledger: Ledger, { setup, glass }: SetupGlass, { count, variation }: { readonly count: number; readonly variation?: Variation }): readonly OwnSwing[] {
  return ledger.cell(`own swings|${setup}|${glass}|${variation?.key ?? ''}|${count}`, () => {
    const rig = swungRig(ledger, setup, glass, variation);
    return rig === undefined ? [] : modesOf(rig, count).map((mode) => ({ mode, shares: sharesOf(rig, mode) }));
  });
}

/** Of a swing's energy, how much each joint and the ground hold, the most first. */
export const sharesOf = ({ springs }: RigNetwork, { springShares }: Mode): OwnSwing['shares'] =>
  springs.map((spring, at) => ({ spring, share: springShares[at]?.reduce((sum, one) => sum + one, 0) ?? 0 })).toSorted((a, b) => b.share - a.share);
