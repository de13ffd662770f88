import type { PowerNode } from './powerTrace.ts';

/** Voltage and current at each node of a supply, in the order of its nodes. */
export interface Flow {
  /** At the node's input, after its cable. */
  readonly volts: Float64Array;
  /** Through its cable and plugs. */
  readonly amps: Float64Array;
  /** Out of the supply. */
  readonly sourceA: number;
  /** No voltages exist that feed these loads through these cables. */
  readonly collapses: boolean;
}

export type LoadCase = 'typicalW' | 'peakW';

const MOST_SWEEPS = 400;
const SETTLED = 1e-10; // of the source voltage, from sweep to sweep

/**
 * Constant-power loads on a tree of cables: currents are summed from the leaves up, voltages taken down from the source, until
 * both agree. From the source voltage downwards the sweeps fall towards the upper solution; where none exists they fall on.
 */
export function powerFlow(nodes: readonly PowerNode[], { sourceV, load }: { sourceV: number; load: LoadCase }): Flow {
  const volts = new Float64Array(nodes.length);
  const amps = new Float64Array(nodes.length);
  for (const [at, { parent, regulated }] of nodes.entries()) volts[at] = regulated?.volts ?? (parent < 0 ? sourceV : (volts[parent] as number));
  let sourceA = 0;
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep += 1) {
    sourceA = sweepUp(nodes, load, volts, amps, sourceV);
    const change = sweepDown(nodes, volts, amps, sourceV);
    if (!(change < Infinity)) return { volts, amps, sourceA, collapses: true };
    if (change <= SETTLED * sourceV) return { volts, amps, sourceA, collapses: false };
  }
  return { volts, amps, sourceA, collapses: true };
}

function sweepUp(nodes: readonly PowerNode[], load: LoadCase, volts: Float64Array, amps: Float64Array, sourceV: number): number {
  for (const [at, { draw }] of nodes.entries()) amps[at] = (draw?.[load] ?? 0) / (volts[at] as number);
  let sourceA = 0;
  for (let at = nodes.length - 1; at >= 0; at -= 1) {
    const { parent, regulated } = nodes[at] as PowerNode;
    const parentV = parent < 0 ? sourceV : (volts[parent] as number);
    const drawn = regulated === undefined ? (amps[at] as number) : ((amps[at] as number) * regulated.volts) / (regulated.efficiency * parentV);
    if (parent < 0) sourceA += drawn;
    else amps[parent] = (amps[parent] as number) + drawn;
  }
  return sourceA;
}

/** The largest change of a voltage; `Infinity` where one falls to nothing. */
function sweepDown(nodes: readonly PowerNode[], volts: Float64Array, amps: Float64Array, sourceV: number): number {
  let change = 0;
  for (const [at, { parent, regulated, loop }] of nodes.entries()) {
    const fed = regulated?.volts ?? (parent < 0 ? sourceV : (volts[parent] as number));
    const next = fed - (amps[at] as number) * loop.ohm;
    if (!(next > 0)) return Infinity;
    change = Math.max(change, Math.abs(next - (volts[at] as number)));
    volts[at] = next;
  }
  return change;
}
