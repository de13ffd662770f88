import type { Mode } from '../../calc/mechanics/network/modes.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type Variation, rigNetwork } from './rigNetwork.ts';

/** Enough to pass over the six ways in which the whole rig moves on what holds it. */
const MODES = 10;

/** The lowest swings of a camera build on what holds it, slowest first; none where nothing is placed or some pieces move freely. */
export function rigModes(ledger: Ledger, setup: string, glass: string, variation?: Variation): readonly Mode[] {
  return ledger.cell(`rig modes|${setup}|${glass}|${variation?.key ?? ''}`, () => {
    const rig = rigNetwork(ledger, setup, glass, variation);
    return rig === undefined || rig.network.freeMotions.length > 0 ? [] : rig.network.modes(MODES);
  });
}
