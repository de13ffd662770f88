import type { Supply } from '../../assembly/lines/powerTrace.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { runtime } from '../../calc/power/runtime.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import type { PackState } from './packState.ts';
import { firstToDropOut, flowBelow, packOn, supplyOf } from './supplies.ts';

/** How long one pack of a supply lasts at the coldest of the setup's days. */
export interface BatteryRun {
  readonly hours: number;
  /** Charge left when it ends. */
  readonly endSoc: number;
  /** Power at the pack: what is drawn, and what cables and regulators lose. */
  readonly loadW: number;
  readonly lossW: number;
  /** Voltage under load at which it ends. */
  readonly endV: number;
  /** The device that drops out before the pack is empty, where one does. */
  readonly endedBy: SetupPiece | undefined;
  readonly pack: PackState;
}

export function batteryRun(asking: Asking, whole: SetupGlass, given: Supply): BatteryRun {
  return asking.ledger.cell(`battery run|${whole.setup}|${whole.glass}|${given.piece.ref}`, () => {
    // Looked up again in here, so that the run is spoilt when what hangs on the supply changes.
    const supply = supplyOf(asking, whole, given.piece.ref) ?? given;
    const pack = packOn(asking, whole.setup, supply);
    const flow = flowBelow(supply, pack.nominalV, 'typicalW');
    const loadW = flow.collapses ? Infinity : flow.sourceA * pack.nominalV;
    const drawnW = supply.nodes.reduce((sum, { draw }) => sum + (draw?.typicalW ?? 0), 0);
    const { endV, endedBy } = endOf(supply, pack);
    if (loadW === Infinity) return { hours: 0, endSoc: 1, loadW: drawnW, lossW: 0, endV, endedBy, pack };
    const { hours, endSoc } = runtime({ openCircuitV: pack.openCircuitV.map(([soc, volts]): [number, number] => [soc, volts]), capacityAh: pack.capacityAh, internalOhm: pack.internalOhm, loadW, cutoffV: endV });
    return { hours, endSoc, loadW, lossW: loadW - drawnW, endV, endedBy, pack };
  });
}

/** The pack's cut-off, or the voltage at which the first device drops out. */
function endOf(supply: Supply, pack: PackState): { endV: number; endedBy: SetupPiece | undefined } {
  const first = firstToDropOut(supply, pack.cutoffV);
  return first === undefined ? { endV: pack.cutoffV, endedBy: undefined } : { endV: first.sourceV, endedBy: first.piece };
}
