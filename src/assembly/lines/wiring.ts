import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import type { Line } from '../../shoot/schema/build.ts';
import type { Port } from '../../shoot/schema/electrics.ts';
import { type SetupPiece, setupPieces } from '../setupPieces.ts';
import { portNames } from './portNames.ts';

/** A port of a piece in use. */
export interface WiredPort {
  /** `build/piece/port`: unique in the setup. */
  readonly key: string;
  readonly piece: SetupPiece;
  readonly id: string;
  readonly port: Port;
  /** What people call it: "BNC output", "tap 2". */
  readonly name: string;
}

/** A cable between two ports of pieces in use, turned so that it runs from the output to the input. */
export interface WiredLine {
  /** `build/line`; a line that a second line shares its plug with ends in `+`. */
  readonly key: string;
  /** Where it stands in the file. */
  readonly path: string;
  readonly from: WiredPort;
  readonly to: WiredPort;
  readonly cable: PartView | undefined;
  /** Which end of the file's line is the output: its lengths and plugs are written that way round. */
  readonly turned: boolean;
  /** Plugged straight in, without a cable. */
  readonly direct?: boolean;
  /** Runs in the cable of another line, between ports that share their plugs. */
  readonly shared: boolean;
}

/** All ports of a setup and the cables between them. */
export interface Wiring {
  readonly pieces: ReadonlyMap<string, SetupPiece>;
  readonly ports: ReadonlyMap<string, WiredPort>;
  readonly portsOf: ReadonlyMap<string, readonly WiredPort[]>;
  readonly lines: readonly WiredLine[];
  readonly byKey: ReadonlyMap<string, WiredLine>;
  /** Lines that arrive at a port, and lines that leave it, by its key. */
  readonly into: ReadonlyMap<string, readonly WiredLine[]>;
  readonly outOf: ReadonlyMap<string, readonly WiredLine[]>;
}

/**
 * The wiring of a setup with one of its glasses: camera build, glass and live stations. A line whose far piece is not in use
 * (another glass's motor, a station that stays at home) is not there either.
 */
export function wiring(ledger: Ledger, setup: string, glass: string): Wiring {
  return ledger.cell(`wiring|${setup}|${glass}`, () => {
    const pieces = setupPieces(ledger, setup, glass);
    const portsOf = new Map([...pieces.values()].map((piece) => [piece.ref, portsOfPiece(piece)] as const));
    const ports = new Map([...portsOf.values()].flatMap((all) => all.map((port) => [port.key, port] as const)));
    const lines = homesOf(ledger, setup, glass).flatMap(({ build, root }) => linesBelow(ledger, build, root, ports));
    return { pieces, ports, portsOf, lines, byKey: new Map(lines.map((line) => [line.key, line])), into: byEnd(lines, 'to'), outOf: byEnd(lines, 'from') };
  });
}

function portsOfPiece(piece: SetupPiece): WiredPort[] {
  const ports = (piece.part.read('ports') ?? {}) as Readonly<Record<string, Port>>;
  const names = portNames(ports);
  return Object.entries(ports).map(([id, port]) => ({ key: `${piece.ref}/${id}`, piece, id, port, name: names[id] ?? id }));
}

interface Home {
  readonly build: string;
  readonly root: string;
}

function homesOf(ledger: Ledger, setup: string, glass: string): Home[] {
  const camera = ledger.at(`setups/${setup}/camera`) as string;
  const stations = (ledger.at(`setups/${setup}/stations`) ?? []) as readonly string[];
  return [{ build: camera, root: `builds/${camera}` }, { build: camera, root: `glasses/${glass}` }, ...stations.map((build) => ({ build, root: `builds/${build}` }))];
}

function linesBelow(ledger: Ledger, build: string, root: string, ports: ReadonlyMap<string, WiredPort>): WiredLine[] {
  return ledger.keys(`${root}/lines`).flatMap((id) => {
    const path = `${root}/lines/${id}`;
    const { from, to, cable, direct = false } = ledger.at(path) as Line;
    const [a, b] = [ports.get(wholeKey(build, from)), ports.get(wholeKey(build, to))];
    if (a === undefined || b === undefined) return [];
    const view = cable === undefined ? undefined : new PartView(ledger, cable);
    const line = turnedRight({ key: `${build}/${id}`, path, from: a, to: b, cable: view, turned: false, direct, shared: false });
    return [line, ...sharedBeside(line, ports)];
  });
}

/** An end is written `piece/port` in its own build, `build/piece/port` in another. */
const wholeKey = (build: string, end: string): string => (end.split('/').length > 2 ? end : `${build}/${end}`);

function turnedRight(line: WiredLine): WiredLine {
  const { from, to } = line;
  const backwards = (from.port.way === 'in' && to.port.way !== 'in') || (from.port.way !== 'out' && to.port.way === 'out');
  return backwards ? { ...line, from: to, to: from, turned: !line.turned } : line;
}

/** One cable serves ports that share their plugs: a motor's control and power, picture and supply on one plug. */
function sharedBeside(line: WiredLine, ports: ReadonlyMap<string, WiredPort>): WiredLine[] {
  const beside = ({ piece, port: { shares } }: WiredPort) => (shares === undefined ? undefined : ports.get(`${piece.ref}/${shares}`));
  const [from, to] = [beside(line.from), beside(line.to)];
  if (from === undefined || to === undefined) return [];
  return [turnedRight({ ...line, key: `${line.key}+`, from, to, shared: true })];
}

function byEnd(lines: readonly WiredLine[], end: 'from' | 'to'): Map<string, WiredLine[]> {
  const found = new Map<string, WiredLine[]>();
  for (const line of lines) {
    const at = line[end].key;
    const there = found.get(at);
    if (there === undefined) found.set(at, [line]);
    else there.push(line);
  }
  return found;
}
