import { type Flow, type LoadCase, powerFlow } from '../../assembly/lines/powerFlow.ts';
import { type PowerNode, type Supply, powerTrace } from '../../assembly/lines/powerTrace.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import { power as assumed } from '../../standards/assumptions/power.ts';
import type { Missing } from '../answer.ts';
import type { Asking } from '../Asking.ts';
import { describeFigure } from '../describeFigure.ts';
import { NotEntered } from '../NotEntered.ts';
import type { SetupGlass } from '../subjects.ts';
import { type PackState, packState } from './packState.ts';
import { lower, worstOfDays } from './shootFigures.ts';
import { type PieceSubject, eachWired } from './wired.ts';

/** Every supply of every setup that feeds something; of a further glass only where it feeds pieces of that glass. */
export function eachSupply(ledger: Ledger): readonly PieceSubject[] {
  return ledger.cell('each supply', () => eachWired(ledger).flatMap(({ subject, whole }) =>
    powerTrace(ledger, whole.setup, whole.glass)
      .supplies.filter(({ kind, nodes }) => kind !== 'mains' && nodes.length > 0 && (subject.glass === undefined || nodes.some(({ piece }) => piece.fromGlass)))
      .map(({ piece }) => ({ ...subject, piece: piece.ref })),
  ));
}

/**
 * A supply as it will be used: what its voltage does not suit is left unplugged, and what hangs behind that too. That it does not
 * suit is found by the question on the plug.
 */
export function supplyOf(asking: Asking, { setup, glass }: SetupGlass, ref: string): Supply | undefined {
  return asking.ledger.cell(`supply|${setup}|${glass}|${ref}`, () => {
    const supply = powerTrace(asking.ledger, setup, glass).supplies.find(({ piece }) => piece.ref === ref);
    if (supply === undefined || supply.kind === 'mains') return supply;
    const { fullV } = packOn(asking, setup, supply);
    const out = new Set<number>();
    const suits = (at: number, node: PowerNode): boolean => {
      const volts = node.regulated?.volts ?? (isRegulated(supply, at) ? undefined : fullV);
      return volts === undefined || (volts >= (lowestV(node)?.value ?? 0) - 1e-9 && volts <= (highestV(node)?.value ?? Infinity) + 1e-9);
    };
    for (const [at, node] of supply.nodes.entries()) if (out.has(node.parent) || !suits(at, node)) out.add(at);
    return out.size === 0 ? supply : { ...supply, nodes: supply.nodes.map((node, at) => (out.has(at) ? { ...node, draw: undefined } : node)) };
  });
}

/** The coldest of the setup's days, or the default. */
export const coldestC = (asking: Asking, setup: string): Figure =>
  asking.ledger.cell(`coldest|${setup}`, () => worstOfDays(asking.ledger, setup, 'temperatureC', lower) ?? asking.assume(assumed.temperatureC));

/** The pack a supply starts with, at the coldest of the setup's days. */
export function packOn(asking: Asking, setup: string, supply: Pick<Supply, 'packs' | 'piece'>): PackState {
  const [first] = supply.packs;
  if (first === undefined || !first.has('pack')) throw new NotEntered([{ path: `${supply.piece.path}/packs`, says: `the packs on ${supply.piece.name}` }]);
  return packState(asking, first, coldestC(asking, setup).value);
}

/** Draws that are not entered below a supply. */
export const missingDraws = ({ nodes }: Supply): Missing[] =>
  nodes.flatMap(({ draw, piece }) => (draw?.missing === undefined ? [] : describeFigure(piece.part, draw.missing)));

/** Voltages and currents below a supply; every draw must be known. */
export function flowBelow(supply: Supply, sourceV: number, load: LoadCase): Flow {
  const missing = missingDraws(supply);
  if (missing.length > 0) throw new NotEntered(missing);
  const known = FLOWS.get(supply) ?? new Map<string, Flow>();
  FLOWS.set(supply, known);
  const key = `${load} ${sourceV}`;
  const flow = known.get(key) ?? powerFlow(supply.nodes, { sourceV, load });
  known.set(key, flow);
  return flow;
}

/** A flow follows from the supply alone, and the same few are asked for by every question on it. */
const FLOWS = new WeakMap<Supply, Map<string, Flow>>();

/** The lowest voltage a fed input takes, as its port states. */
export const lowestV = ({ line, piece }: PowerNode): Figure | undefined => (line === undefined ? undefined : piece.part.figure(`ports/${line.to.id}/power/lowV`));
export const highestV = ({ line, piece }: PowerNode): Figure | undefined => (line === undefined ? undefined : piece.part.figure(`ports/${line.to.id}/power/highV`));

/**
 * The voltage at the supply at which a node falls to its lowest: that, and what is lost on the way there. A few rounds settle it,
 * as the loss hardly changes with the voltage.
 */
export function dropsOutAt(supply: Supply, at: number, load: LoadCase): number | undefined {
  const node = supply.nodes[at];
  const low = node === undefined ? undefined : lowestV(node)?.value;
  if (low === undefined || node?.draw === undefined || isRegulated(supply, at)) return undefined;
  let sourceV = low;
  for (let round = 0; round < 6; round += 1) {
    const { volts, collapses } = flowBelow(supply, sourceV, load);
    if (collapses) return sourceV * 2;
    sourceV += low - (volts[at] as number);
  }
  return sourceV;
}

/** The device that drops out first as the supply falls towards `endV`, and the voltage at the supply then; `undefined` where all run to it. */
export function firstToDropOut(supply: Supply, endV: number): { piece: SetupPiece; sourceV: number } | undefined {
  const lowest = supply.nodes.map((node, at) => (node.draw === undefined || isRegulated(supply, at) ? undefined : lowestV(node)?.value));
  let found: { piece: SetupPiece; sourceV: number } | undefined;
  for (let round = 0, sourceV = endV; round < 8; round += 1) {
    const { volts, collapses } = flowBelow(supply, sourceV, 'typicalW');
    let short = 0;
    for (const [at, low] of lowest.entries()) {
      const lacks = low === undefined ? 0 : collapses ? low : low - (volts[at] as number);
      if (lacks <= short + 1e-9) continue;
      short = lacks;
      found = { piece: (supply.nodes[at] as PowerNode).piece, sourceV };
    }
    if (short <= 1e-9) break;
    sourceV += short;
    if (found !== undefined) found = { ...found, sourceV };
  }
  return found;
}

/** Whether a regulator on the way makes the node's voltage its own. */
export function isRegulated({ nodes }: Supply, at: number): boolean {
  for (let place = at; place >= 0; place = nodes[place]?.parent ?? -1) if (nodes[place]?.regulated !== undefined) return true;
  return false;
}
