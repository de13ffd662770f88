import { powerFlow } from '../../assembly/lines/powerFlow.ts';
import { powerTrace } from '../../assembly/lines/powerTrace.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import type { SetupGlass } from '../subjects.ts';

/** What runs in a supply cable in use: volts at its far end, amps through it. */
export interface LineFlow {
  readonly volts: number;
  readonly amps: number;
}

/** Every fed line of a setup by its key, at the marked voltage of the packs and the usual load. */
export function lineFlows(ledger: Ledger, { setup, glass }: SetupGlass): ReadonlyMap<string, LineFlow> {
  return ledger.cell(`line flows|${setup}|${glass}`, () => {
    const found = new Map<string, LineFlow>();
    for (const { packs, piece, nodes } of powerTrace(ledger, setup, glass).supplies) {
      const sourceV = packs[0]?.figure('pack/nominalV')?.value ?? supplyVolts(piece.part);
      if (sourceV === undefined || nodes.length === 0) continue;
      const { volts, amps, collapses } = powerFlow(nodes, { sourceV, load: 'typicalW' });
      if (!collapses) nodes.forEach(({ line }, at) => line !== undefined && found.set(line.key, { volts: volts[at] ?? 0, amps: amps[at] ?? 0 }));
    }
    return found;
  });
}

function supplyVolts(part: PartView): number | undefined {
  const ports = Object.keys((part.read('ports') ?? {}) as object);
  return ports.map((id) => part.figure(`ports/${id}/power/outputV`)?.value ?? part.figure(`ports/${id}/power/highV`)?.value).find((volts) => volts !== undefined);
}
