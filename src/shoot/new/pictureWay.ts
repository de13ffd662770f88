import type { Port } from '../schema/electrics.ts';
import { typicalParts } from '../typical/typicalParts.ts';
import { type Wiring, addPiece, cablesBetween, connect, freePorts, partOf } from './wiring.ts';

const SPLITTER = 'splitter-hdmi';
const COAX_TO_HDMI = 'converter-sdi-hdmi';
const HDMI_TO_COAX = 'converter-hdmi-sdi';

/**
 * Brings the picture to a piece of the same build: from a free output that carries it, else through a converter, else off a splitter
 * put into a line that carries it. The camera's own outputs come first, then loop-outs of what is fed.
 */
export function bringPicture(wiring: Wiring, to: string): boolean {
  const sources = Object.keys(wiring.pieces).filter((piece) => piece !== to);
  const bring = (): boolean => sources.some((from) => plugged(wiring, from, to)) || [HDMI_TO_COAX, COAX_TO_HDMI].some((converter) => throughConverter(wiring, converter, to) !== undefined);
  if (bring()) return true;
  const splitter = splitLine(wiring);
  if (splitter === undefined) return false;
  sources.push(splitter);
  return bring();
}

/** A build that a picture is taken from, by its id. */
export interface Near {
  readonly id: string;
  readonly wiring: Wiring;
}

/** Brings the picture to a piece of another build by a long coax: off the first build that has such an output free, else off one made for it. */
export function bringPictureFar(nears: readonly Near[], far: Wiring, to: string): boolean {
  const outlet = firstOf(nears, coaxOutputs) ?? firstOf(nears, madeCoaxOutput);
  if (outlet === undefined) return false;
  const input = coaxInput(far, to);
  const [piece, id, port] = outlet.from;
  const cable = input === undefined ? undefined : cablesBetween(port, input[2]).at(-1);
  if (input === undefined || cable === undefined) return false;
  outlet.near.wiring.takenAfar.add(`${piece}/${id}`);
  far.lines[`picture-from-${outlet.near.id}`] = { from: `${outlet.near.id}/${piece}/${id}`, to: `${input[0]}/${input[1]}`, cable };
  return true;
}

/** The first build of several that has such an output. */
function firstOf(nears: readonly Near[], outputsOf: (wiring: Wiring) => readonly Socket[]): { readonly near: Near; readonly from: Socket } | undefined {
  for (const near of nears) {
    const [from] = outputsOf(near.wiring);
    if (from !== undefined) return { near, from };
  }
  return undefined;
}

type Socket = readonly [piece: string, id: string, port: Port];

/** Runs a cable where an output that carries the picture meets an input; one that carries none is left alone. */
function plugged(wiring: Wiring, from: string, to: string): boolean {
  return litOutputs(wiring, from).length > 0 && connect(wiring, 'video', from, to, (id) => isLit(wiring, from, id));
}

const litOutputs = (wiring: Wiring, piece: string): Socket[] => freePorts(wiring, piece, 'video', 'out').filter(([id]) => isLit(wiring, piece, id)).map(([id, port]) => [piece, id, port]);

/** Whether an output carries a picture: a camera's own, a receiver's, or one that passes on an input which is plugged. A loop-out passes on its own input and no other. */
function isLit(wiring: Wiring, piece: string, output: string): boolean {
  const part = partOf(wiring, piece);
  const from = part?.ports?.[output]?.video?.from;
  if (from === undefined) return part?.body !== undefined || part?.radio?.role === 'receives';
  return Object.values(wiring.lines).some(({ to }) => to === `${piece}/${from}`);
}

/** Puts a converter between a free output and a piece: its id, or nothing where it does not go between them. */
function throughConverter(wiring: Wiring, converter: string, to: string): string | undefined {
  const sources = Object.keys(wiring.pieces).filter((piece) => piece !== to);
  const id = addPiece(wiring, converter);
  if (sources.some((from) => plugged(wiring, from, id)) && connect(wiring, 'video', id, to)) return id;
  removePiece(wiring, id);
  return undefined;
}

function removePiece(wiring: Wiring, id: string): void {
  delete wiring.pieces[id];
  for (const [line, { from, to }] of Object.entries(wiring.lines)) if (from.startsWith(`${id}/`) || to.startsWith(`${id}/`)) delete wiring.lines[line];
}

/** A splitter in the first HDMI line that there is, in place of its cable. */
function splitLine(wiring: Wiring): string | undefined {
  const found = Object.entries(wiring.lines).find(([, { from }]) => {
    const [piece = '', port = ''] = from.split('/');
    return partOf(wiring, piece)?.ports?.[port]?.video?.signal === 'HDMI';
  });
  const [line, { from, to }] = found ?? ['', { from: '', to: '' }];
  if (found === undefined) return undefined;
  delete wiring.lines[line];
  const id = addPiece(wiring, SPLITTER);
  const [source = '', output] = from.split('/');
  connect(wiring, 'video', source, id, (port) => port === output);
  connect(wiring, 'video', id, to.split('/')[0] ?? '');
  return id;
}

const coaxOutputs = (wiring: Wiring): Socket[] => Object.keys(wiring.pieces).flatMap((piece) => litOutputs(wiring, piece)).filter(([, , { video }]) => video?.signal === 'SDI');

/** A coax output where a build has none free: a converter on an HDMI output, off a splitter if there is none of those either. */
function madeCoaxOutput(wiring: Wiring): Socket[] {
  const converted = (): Socket[] => {
    const sources = Object.keys(wiring.pieces);
    const id = addPiece(wiring, HDMI_TO_COAX);
    if (sources.some((from) => plugged(wiring, from, id))) return litOutputs(wiring, id);
    removePiece(wiring, id);
    return [];
  };
  const first = converted();
  return first.length > 0 || splitLine(wiring) === undefined ? first : converted();
}

/** Where a coax goes into a piece, through a converter if it has no such input itself. */
function coaxInput(wiring: Wiring, to: string): Socket | undefined {
  const own = freePorts(wiring, to, 'video', 'in').find(([, { video }]) => video?.signal === 'SDI');
  if (own !== undefined) return [to, ...own];
  const id = addPiece(wiring, COAX_TO_HDMI);
  const port = typicalParts[COAX_TO_HDMI]?.ports?.['sdi-in'];
  if (port !== undefined && connect(wiring, 'video', id, to)) return [id, 'sdi-in', port];
  removePiece(wiring, id);
  return undefined;
}
