import { type Figure, assume } from '../../shoot/ledger/figures.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import { power as assumed } from '../../standards/assumptions/power.ts';
import { type SetupPiece, pieceSetting } from '../setupPieces.ts';
import { type Loop, loopOf } from './cableLoop.ts';
import { type Draw, drawOf } from './draw.ts';
import { isSound } from './lineFaults.ts';
import { negotiatedUsb } from './negotiatedUsb.ts';
import { type WiredLine, type WiredPort, type Wiring, wiring } from './wiring.ts';

/** One fed input. Nodes of a supply stand with parents first. */
export interface PowerNode {
  /** Place of the node it is fed from in the same list, −1 where it hangs on the supply itself. */
  readonly parent: number;
  /** The cable it is fed by; none for what the supply's own piece draws. */
  readonly line: WiredLine | undefined;
  readonly piece: SetupPiece;
  /** The output that feeds it makes its own voltage. */
  readonly regulated: { readonly volts: number; readonly efficiency: number } | undefined;
  readonly loop: Loop;
  /** What the piece draws here; nothing at a second input, or where it only passes on. */
  readonly draw: Draw | undefined;
}

/** Something that feeds: a pack, a plate with packs on it, a device with a pack of its own, a supply from the mains. */
export interface Supply {
  readonly piece: SetupPiece;
  readonly kind: 'pack' | 'plate' | 'mains';
  readonly packs: readonly PartView[];
  readonly hotSwap: boolean;
  readonly nodes: readonly PowerNode[];
}

/** Where a node stands: in which supply, and at which place of its nodes. */
export interface NodePlace {
  readonly supply: Supply;
  readonly at: number;
}

export interface PowerTrace {
  readonly wiring: Wiring;
  readonly supplies: readonly Supply[];
  /** The node that a line feeds, by the line's key. */
  readonly byLine: ReadonlyMap<string, NodePlace>;
  /** The node that a piece draws at, by `build/piece`. */
  readonly byPiece: ReadonlyMap<string, NodePlace>;
  /** Pieces that draw power. */
  readonly drawing: readonly SetupPiece[];
  /** Those that get none. */
  readonly unfed: readonly SetupPiece[];
  /** Cables into an input that is fed already. */
  readonly second: readonly WiredLine[];
}

/** Who feeds whom in a setup, from the packs on. */
export function powerTrace(ledger: Ledger, setup: string, glass: string): PowerTrace {
  return ledger.cell(`power|${setup}|${glass}`, () => {
    const wired = wiring(ledger, setup, glass);
    const tree = new Tree(ledger, wired);
    const pieces = [...wired.pieces.values()];
    const clear = pieces.filter((piece) => givesOnly(piece, wired)).map((piece) => tree.grow(piece));
    // What runs on a pack of its own only where nothing else feeds it comes second.
    const own = pieces.filter((piece) => !givesOnly(piece, wired) && hasPack(piece) && !tree.feeds(piece)).map((piece) => tree.grow(piece));
    const drawing = pieces.filter((piece) => drawOf(piece) !== undefined);
    const supplies = [...clear, ...own];
    const places = supplies.flatMap((supply) => supply.nodes.map((node, at) => ({ node, place: { supply, at } })));
    const byLine = new Map(places.flatMap(({ node, place }) => (node.line === undefined ? [] : [[node.line.key, place] as const])));
    const byPiece = new Map(places.flatMap(({ node, place }) => (node.draw === undefined ? [] : [[node.piece.ref, place] as const])));
    return { wiring: wired, supplies, byLine, byPiece, drawing, unfed: drawing.filter((piece) => !tree.feeds(piece)), second: tree.second };
  });
}

/** Whether a piece is a source by nature: it gives power and takes none in by cable. */
function givesOnly(piece: SetupPiece, wired: Wiring): boolean {
  const ports = (wired.portsOf.get(piece.ref) ?? []).filter(({ port }) => port.kind === 'power');
  const takes = ports.some((port) => port.port.way === 'in' || (port.port.way === 'both' && wired.into.has(port.key)));
  return !takes && (hasPack(piece) || ports.length > 0);
}

const hasPack = ({ part }: SetupPiece): boolean => part.has('pack') || part.has('batteryPlate');

class Tree {
  readonly second: WiredLine[] = [];
  readonly #ledger: Ledger;
  readonly #wiring: Wiring;
  readonly #fedInputs = new Set<string>();
  readonly #fedPieces = new Set<string>();

  constructor(ledger: Ledger, wired: Wiring) {
    this.#ledger = ledger;
    this.#wiring = wired;
  }

  feeds(piece: SetupPiece): boolean {
    return this.#fedPieces.has(piece.ref);
  }

  /** The supply a piece is, with everything that hangs on it. */
  grow(piece: SetupPiece): Supply {
    const nodes: PowerNode[] = [];
    this.#fedPieces.add(piece.ref);
    const own = drawOf(piece);
    if (own !== undefined) nodes.push({ parent: -1, line: undefined, piece, regulated: undefined, loop: NO_LOOP, draw: own });
    this.#hangOn(nodes, -1, this.#outputs(piece, undefined));
    for (let at = 0; at < nodes.length; at += 1) {
      const { piece: fed, line } = nodes[at] as PowerNode;
      if (line !== undefined) this.#hangOn(nodes, at, this.#outputs(fed, line.to.id));
    }
    return { piece, kind: piece.part.has('batteryPlate') ? 'plate' : piece.part.has('pack') ? 'pack' : 'mains', packs: this.#packsOf(piece), hotSwap: piece.part.read('batteryPlate/hotSwap') === true, nodes };
  }

  #packsOf(piece: SetupPiece): PartView[] {
    if (piece.part.has('batteryPlate')) return (pieceSetting(piece, 'packs') ?? []).map((id) => new PartView(this.#ledger, id));
    return piece.part.has('pack') ? [piece.part] : [];
  }

  #hangOn(nodes: PowerNode[], parent: number, outputs: readonly WiredPort[]): void {
    for (const output of outputs) {
      for (const line of this.#wiring.outOf.get(output.key) ?? []) {
        if (!isSound(line) || line.to.port.kind !== 'power') continue;
        if (this.#fedInputs.has(line.to.key)) {
          this.second.push(line);
          continue;
        }
        this.#fedInputs.add(line.to.key);
        nodes.push(this.#node(parent, line));
      }
    }
  }

  #node(parent: number, line: WiredLine): PowerNode {
    const { piece } = line.to;
    const draw = this.#fedPieces.has(piece.ref) ? undefined : drawOf(piece);
    this.#fedPieces.add(piece.ref);
    return { parent, line, piece, regulated: this.#regulated(line), loop: loopOf(this.#ledger, line), draw };
  }

  #regulated({ from, to }: WiredLine): PowerNode['regulated'] {
    const path = `ports/${from.id}/power`;
    const volts = from.piece.part.figure(`${path}/outputV`)?.value ?? negotiatedUsb(from, to)?.volts;
    if (volts === undefined) return undefined;
    const efficiency: Figure = from.piece.part.figure(`${path}/efficiency`) ?? assume(this.#ledger, assumed.regulatorEfficiency);
    return { volts, efficiency: Math.max(efficiency.value, 0.01) };
  }

  /** The outputs fed from an input; from the pack, or from nowhere else, where there is none. */
  #outputs(piece: SetupPiece, input: string | undefined): WiredPort[] {
    const ports = (this.#wiring.portsOf.get(piece.ref) ?? []).filter(({ port }) => port.kind === 'power');
    const inputs = ports.filter(({ port }) => port.way === 'in');
    return ports.filter(({ key, port }) => {
      if (port.way === 'in' || (port.way === 'both' && !this.#wiring.outOf.has(key))) return false;
      const from = port.power?.from;
      if (input === undefined) return from === 'pack' || (from === undefined && (inputs.length === 0 || hasPack(piece)));
      return from === input || (from === undefined && inputs.length === 1 && !hasPack(piece));
    });
  }
}

const NO_LOOP: Loop = { ohm: 0, lowOhm: 0, highOhm: 0, says: 'no cable' };
