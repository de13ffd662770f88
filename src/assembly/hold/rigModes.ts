import type { Mode } from '../../calc/mechanics/network/modes.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type RigNetwork, type Variation, rigNetwork } from './rigNetwork.ts';
import { heldFast } from './underWeight.ts';

/** Six ways in which the whole rig moves on what holds it, and some of its own. */
const ON_GROUND = 10;
/** The lowest swings of a camera build on what holds it, slowest first; none where nothing is placed or some pieces move freely. */
export function rigModes(ledger: Ledger, setup: string, glass: string, variation?: Variation): readonly Mode[] {
  return ledger.cell(`rig modes|${setup}|${glass}|${variation?.key ?? ''}`, () => modesOf(rigNetwork(ledger, setup, glass, variation), ON_GROUND));
}

/**
 * The rig whose swings are its own: held fast at what it stands on, so that no give of the ground hides or lends any; free where it stands on nothing.
 * So held, more mass never swings faster and a stiffer joint never slower.
 */
export function swungRig(ledger: Ledger, setup: string, glass: string, variation?: Variation): RigNetwork | undefined {
  const onGround = rigNetwork(ledger, setup, glass, variation);
  return onGround === undefined || onGround.stands.contacts.length === 0 ? onGround : heldFast(ledger, setup, glass, variation);
}

/** So many of the lowest swings of a rig; none where some pieces move freely. */
export const modesOf = (rig: RigNetwork | undefined, count: number): readonly Mode[] => (rig === undefined || rig.network.freeMotions.length > 0 ? [] : rig.network.modes(count));
