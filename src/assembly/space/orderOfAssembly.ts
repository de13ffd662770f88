import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import type { ModelJoint } from '../placing/rigModel.ts';
import { keyRoom } from './keyRoom.ts';
import { subAssemblies } from './subAssemblies.ts';
import { takenApart } from './takenApart.ts';

/** One step: a piece goes on, and the joints that fix it to what is there already. */
export interface AssemblyStep {
  readonly ref: string;
  readonly joints: readonly ModelJoint[];
  /** It is the first of some that are put together apart from the rest. */
  readonly apart?: true;
  /** What was put together apart and goes on with it. */
  readonly along?: readonly string[];
}

export interface BlockedScrew {
  readonly joint: ModelJoint;
  readonly by: string;
}

export interface AssemblyOrder {
  /** The order; of pieces with a screw that no order reaches it is none, only what hangs on what. */
  readonly steps: readonly AssemblyStep[];
  /** Screws that cannot be reached in any order: the joint, and the piece in the way of its key. */
  readonly blocked: readonly BlockedScrew[];
}

/**
 * An order in which every piece can go on with its screws within reach of a key. Piece by piece on the root where that goes; else with some put
 * together apart first. Whether there is one at all does not depend on where placing starts.
 */
export function orderOfAssembly(ledger: Ledger, setup: string, glass: string): AssemblyOrder {
  return ledger.cell(`order of assembly|${setup}|${glass}`, () => {
    const { model, places } = placeSetup(ledger, setup, glass);
    const room = keyRoom(ledger, setup, glass);
    const one = takenApart(model, places.keys(), room);
    return one.free ? { steps: one.steps, blocked: [] } : subAssemblies(model, one.steps, room);
  });
}
