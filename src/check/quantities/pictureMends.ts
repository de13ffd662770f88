import { refusals } from '../../assembly/lines/carriage.ts';
import { lineFaults } from '../../assembly/lines/lineFaults.ts';
import type { VideoTrace } from '../../assembly/lines/videoTrace.ts';
import type { WiredLine, WiredPort } from '../../assembly/lines/wiring.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Edit, Patch } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import type { Mend } from '../answer.ts';
import { converterMends } from './converterMends.ts';
import { cableEdit, cablesThatFit } from './kitCables.ts';
import { freeName, movedTo, newLine } from './lineEdits.ts';
import { lineName, socketName } from './lineWords.ts';
import type { PictureLoss } from './pictureLoss.ts';

/**
 * Ways to bring a picture by cable to where it is lost: a cable into the input that stands empty, another output or loop-out that
 * carries one, a converter of the kit. Each is held against signal, plugs and format before it is offered.
 */
export function pictureMends(ledger: Ledger, trace: VideoTrace, loss: PictureLoss): Mend[] {
  const { dark, piece } = loss;
  const outputs = litOutputs(trace, piece);
  const empty = dark.kind === 'unfed' && dark.port.piece.ref !== piece.ref ? [dark.port] : [];
  const inputs = inputsOf(trace, piece);
  // The cable that brings nothing to the piece now, at whichever of its inputs, may be moved.
  const held = inputs.flatMap(({ key }) => trace.wiring.into.get(key) ?? []).find(({ shared }) => !shared);
  const pairs = [...inputs.map((to) => ({ to, held })), ...empty.map((to) => ({ to, held: undefined }))];
  const byCable = pairs.flatMap((pair) => outputs.filter(({ piece: from }) => from.ref !== pair.to.piece.ref).flatMap((from) => cabled(ledger, trace, { from, ...pair }) ?? []));
  const best = byCable.toSorted((a, b) => Number(b.edit !== undefined) - Number(a.edit !== undefined)).slice(0, MOST_SHOWN);
  return best.some(({ edit }) => edit !== undefined) ? best : [...converterMends(ledger, trace, outputs, inputs), ...best].slice(0, MOST_SHOWN);
}

const MOST_SHOWN = 2;

/** Free sockets of the same build that carry a picture, the camera's own first. */
function litOutputs({ wiring, at }: VideoTrace, { build, ref }: SetupPiece): WiredPort[] {
  return [...wiring.ports.values()]
    .filter(({ key, piece, port }) => port.kind === 'video' && port.way === 'out' && piece.build === build && piece.ref !== ref && at.get(key)?.picture !== undefined && !wiring.outOf.has(key))
    .toSorted((a, b) => Number(b.piece.part.has('body')) - Number(a.piece.part.has('body')));
}

/** The inputs of a piece: the one that is cabled already first, with the cable there to be moved. */
const inputsOf = ({ wiring }: VideoTrace, piece: SetupPiece): WiredPort[] =>
  (wiring.portsOf.get(piece.ref) ?? []).filter(({ port }) => port.kind === 'video' && port.way === 'in').toSorted((a, b) => Number(wiring.into.has(b.key)) - Number(wiring.into.has(a.key)));

/** A line from an output to an input: the cable that is there, moved; else one of the kit; else in words which is wanted. */
function cabled(ledger: Ledger, { wiring, at }: VideoTrace, { from, to, held }: { from: WiredPort; to: WiredPort; held: WiredLine | undefined }): Mend | undefined {
  const picture = at.get(from.key)?.picture;
  if (picture === undefined || from.port.video?.signal !== to.port.video?.signal) return undefined;
  const line: WiredLine = held === undefined ? fresh(from, to) : { ...held, from, to };
  if (refusals(line, picture).length > 0) return undefined;
  const words = `the ${socketName(from)} into the ${socketName(to)}`;
  const kept = line.cable !== undefined && lineFaults(wiring, line).every(({ kind }) => kind === 'socket taken');
  const cable = kept ? line.cable : cablesThatFit(ledger, wiring, line)[0];
  if (cable === undefined) return { says: `${words}, with a cable that the kit does not hold: ${from.port.connector} to ${to.port.connector}` };
  return { says: `${words} with ${cable.name}`, edit: editFor(ledger, line, held, kept ? undefined : cable) };
}

const fresh = (from: WiredPort, to: WiredPort): WiredLine => ({ key: '', path: '', from, to, cable: undefined, turned: false, shared: false });

function editFor(ledger: Ledger, line: WiredLine, held: WiredLine | undefined, cable: PartView | undefined): Edit {
  const { from, to } = line;
  if (held === undefined) {
    const lines = `builds/${to.piece.build}/lines`;
    return newLine(freeName(ledger, to.piece.build, `picture-to-${to.piece.id}`), from, to, ledger.at(lines) !== undefined, cable?.id);
  }
  const patches: Patch[] = [
    ...movedTo(held, 'from', from).patches,
    ...(held.to.key === to.key ? [] : movedTo(held, 'to', to).patches),
    ...(cable === undefined ? [] : cableEdit(held, cable).patches),
  ];
  return { says: lineName(line), patches };
}
