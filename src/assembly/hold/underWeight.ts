import type { Answered } from '../../calc/mechanics/network/Network.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Vector } from '../placing/Transform.ts';
import { ATTITUDES, weightLoads } from './rigLoads.ts';
import { type RigNetwork, type Variation, rigNetwork } from './rigNetwork.ts';

/** A camera build held fast at its anchor under its own weight, whichever way it is turned. */
export interface UnderWeight {
  readonly rig: RigNetwork;
  /** What each spring carries with the weight pulling along x, y and z; any other way is a mix of the three. */
  readonly springsAlongAxes: () => readonly ReturnType<Answered['springs']>[];
  /** How it moves and what it carries upright, as it is used. */
  readonly upright: () => Answered;
}

/** The rig held fast at its anchor: where the ground gives is left out, only how the rig itself gives counts. */
export const heldFast = (ledger: Ledger, setup: string, glass: string, variation?: Variation): RigNetwork | undefined =>
  rigNetwork(ledger, setup, glass, { ...variation, key: `held fast ${variation?.key ?? ''}`, heldFast: true });

/** `undefined` where too little is placed, or something is held by nothing. */
export function underWeight(ledger: Ledger, setup: string, glass: string, variation?: Variation): UnderWeight | undefined {
  return ledger.cell(`under weight|${setup}|${glass}|${variation?.key ?? ''}`, () => {
    const rig = heldFast(ledger, setup, glass, variation);
    if (rig === undefined || rig.network.freeMotions.length > 0) return undefined;
    const solve = (way: Vector) => rig.network.solve(weightLoads(rig, way));
    let alongAxes: readonly ReturnType<Answered['springs']>[] | undefined;
    let asUsed: Answered | undefined;
    return { rig, springsAlongAxes: () => (alongAxes ??= AXES.map((way) => solve(way).springs())), upright: () => (asUsed ??= solve(ATTITUDES.upright)) };
  });
}

const AXES: readonly Vector[] = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];
