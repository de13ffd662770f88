import type { Piece, Line } from '../schema/build.ts';
import type { Part } from '../schema/part.ts';
import type { Port } from '../schema/electrics.ts';
import { typicalParts } from '../typical/typicalParts.ts';

/** An assembly as it is put together: pieces and the lines between them. */
export interface Wiring {
  readonly pieces: Record<string, Piece>;
  readonly lines: Record<string, Line>;
  /** Outputs that feed another build, as `piece/port`. */
  readonly takenAfar: Set<string>;
}

type Kind = Port['kind'];

/** Runs a cable from a free output of one piece to a free input of another, by the first pair of ports that some typical cable fits. */
export function connect(wiring: Wiring, kind: Kind, from: string, to: string, serves: (output: string) => boolean = () => true): boolean {
  const outputs = freePorts(wiring, from, kind, 'out').filter(([id]) => serves(id));
  const inputs = freePorts(wiring, to, kind, 'in');
  for (const [outId, output] of outputs) {
    for (const [inId, input] of inputs) {
      const cable = cableBetween(output, input, drawnA(partOf(wiring, to)));
      if (cable === undefined) continue;
      wiring.lines[`${from}-${to}-${kind}`] = { from: `${from}/${outId}`, to: `${to}/${inId}`, cable };
      return true;
    }
  }
  return false;
}

/** Feeds a piece from the first of several sources that has a free outlet which fits. */
export const feed = (wiring: Wiring, sources: readonly string[], to: string): boolean => sources.some((source) => connect(wiring, 'power', source, to));

/** Adds a piece of a class under a name that is free: its id. */
export function addPiece({ pieces }: Wiring, of: string): string {
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? of : `${of}-${n}`;
    if (pieces[id] !== undefined) continue;
    pieces[id] = { of };
    return id;
  }
}

/** Sockets of a piece that hold no plug, by their id. */
export function freePorts(wiring: Wiring, piece: string, kind: Kind, way: 'in' | 'out'): (readonly [string, Port])[] {
  const part = partOf(wiring, piece);
  const taken = new Set([...Object.values(wiring.lines).flatMap(({ from, to }) => [from, to]), ...wiring.takenAfar]);
  return Object.entries(part?.ports ?? {}).filter(([id, port]) => port.kind === kind && port.way === way && !taken.has(`${piece}/${id}`));
}

/** The class a piece is of. */
export const partOf = ({ pieces }: Wiring, piece: string): Omit<Part, 'basis'> | undefined => typicalParts[pieces[piece]?.of ?? ''];

/** The shortest typical cable whose two ends go into these two sockets, either way round, and that bears the current if any does. */
function cableBetween(a: Port, b: Port, leastA: number): string | undefined {
  const fits = cablesBetween(a, b);
  return fits.find((id) => a.kind !== 'power' || Number(typicalParts[id]?.cable?.maxA) >= leastA) ?? fits[0];
}

/** What a device draws at most, at the least voltage it takes. */
function drawnA(part: Omit<Part, 'basis'> | undefined): number {
  const lowV = Object.values(part?.ports ?? {}).find(({ kind, way }) => kind === 'power' && way === 'in')?.power?.lowV;
  return Number(part?.draw?.peakW ?? part?.draw?.typicalW ?? 0) / Number(lowV ?? Infinity);
}

/** The typical cables between two sockets, shortest first. */
export function cablesBetween(a: Port, b: Port): string[] {
  if (a.kind === 'video' && a.video?.signal !== b.video?.signal) return [];
  const fits = Object.entries(typicalParts).filter(([, { cable }]) => {
    if (cable?.carries !== a.kind) return false;
    const [one, other] = cable.ends;
    return (plugs(one, a) && plugs(other, b)) || (plugs(other, a) && plugs(one, b));
  });
  const length = (id: string) => Number(typicalParts[id]?.cable?.lengthMm);
  return fits.map(([id]) => id).toSorted((one, other) => length(one) - length(other));
}

function plugs(end: { connector: string; sex?: string | undefined }, port: Port): boolean {
  return end.connector === port.connector && (end.sex === undefined || port.sex === undefined || end.sex !== port.sex);
}
