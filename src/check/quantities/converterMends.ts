import { refusals } from '../../assembly/lines/carriage.ts';
import { portNames } from '../../assembly/lines/portNames.ts';
import type { VideoTrace } from '../../assembly/lines/videoTrace.ts';
import type { WiredLine, WiredPort } from '../../assembly/lines/wiring.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import type { Patch } from '../../shoot/edit/Edit.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { PartView } from '../../shoot/ledger/PartView.ts';
import type { Port } from '../../shoot/schema/electrics.ts';
import type { Mend } from '../answer.ts';
import { cablesThatFit, countOf } from './kitCables.ts';
import { endIn, freeName } from './lineEdits.ts';
import { socketName } from './lineWords.ts';

/** Converters of the kit, not in use, that make what an input takes of what an output sends. */
export function converterMends(ledger: Ledger, trace: VideoTrace, outputs: readonly WiredPort[], inputs: readonly WiredPort[]): Mend[] {
  // A converter that is added becomes a piece of the build, and a build names no sockets of a glass.
  const [sources, ends] = [outputs, inputs].map((sockets) => sockets.filter(({ piece }) => !piece.fromGlass)) as [WiredPort[], WiredPort[]];
  return converters(ledger, trace).flatMap((part) => {
    const found = sources.flatMap((from) => ends.flatMap((to) => throughIt(ledger, trace, part, from, to) ?? []));
    return found.toSorted((a, b) => Number(b.edit !== undefined) - Number(a.edit !== undefined)).slice(0, 1);
  });
}

function throughIt(ledger: Ledger, { wiring, at }: VideoTrace, part: PartView, from: WiredPort, to: WiredPort): Mend | undefined {
  const picture = at.get(from.key)?.picture;
  const { build } = to.piece;
  if (picture === undefined) return undefined;
  const id = freeName(ledger, build, part.id);
  const { input, output } = waysThrough(socketsOf(part, to.piece, id), from, to);
  if (input === undefined || output === undefined) return undefined;
  const ins = bare(from, input);
  const held = (wiring.into.get(to.key) ?? []).find(({ shared }) => !shared);
  const outs: WiredLine = held?.cable === undefined ? bare(output, to) : { ...held, from: output };
  if (refusals(ins, picture).length > 0) return undefined;
  const [first] = cablesThatFit(ledger, wiring, ins);
  const second = held?.cable ?? cablesThatFit(ledger, wiring, outs).find((cable) => cable.path !== first?.path || countOf(cable) > 1);
  const says = `${part.name} between the ${socketName(from)} and the ${socketName(to)}`;
  if (first === undefined || second === undefined) return { says: `${says}, with cables that the kit does not hold`, costs: COSTS };
  const names = [freeName(ledger, build, `picture-to-${id}`), freeName(ledger, build, `picture-from-${id}`)] as const;
  const patches: Patch[] = [
    { op: 'add', path: `builds/${build}/pieces/${id}`, value: { of: part.id } },
    { op: 'add', path: `builds/${build}/lines/${names[0]}`, value: { from: endIn(build, from), to: `${id}/${input.id}`, cable: first.id } },
    held === undefined
      ? { op: 'add', path: `builds/${build}/lines/${names[1]}`, value: { from: `${id}/${output.id}`, to: endIn(build, to), cable: second.id } }
      : { op: 'replace', path: `${held.path}/${held.turned ? 'to' : 'from'}`, value: `${id}/${output.id}` },
  ];
  return { says, edit: { says: `${part.name} in ${build}`, patches }, costs: COSTS };
}

/** The input that takes what one socket sends, and the output that makes of it what the other takes. */
function waysThrough(sockets: readonly WiredPort[], from: WiredPort, to: WiredPort): { readonly input: WiredPort | undefined; readonly output: WiredPort | undefined } {
  const input = sockets.find(({ port }) => port.way === 'in' && port.video?.signal === from.port.video?.signal);
  const output = sockets.find(({ port }) => port.way === 'out' && port.video?.signal === to.port.video?.signal && (port.video?.from === undefined || port.video.from === input?.id));
  return { input, output };
}

const COSTS = 'it wants power and a place, and adds its delay';

const bare = (from: WiredPort, to: WiredPort): WiredLine => ({ key: '', path: '', from, to, cable: undefined, turned: false, shared: false });

/** Sockets of a part that is no piece yet, as the piece it would become beside another. */
function socketsOf(part: PartView, beside: SetupPiece, id: string): WiredPort[] {
  const ports = (part.read('ports') ?? {}) as Readonly<Record<string, Port>>;
  const names = portNames(ports);
  return Object.entries(ports).filter(([, { kind }]) => kind === 'video').map(([port, made]) => ({ key: `${beside.build}/${id}/${port}`, piece: beside, id: port, port: made, name: names[port] ?? port }));
}

/** Parts with a picture input and an output, and nothing to show or send it by, that are not all in use. */
function converters(ledger: Ledger, { wiring }: VideoTrace): PartView[] {
  const used = new Map<string, number>();
  for (const { part } of wiring.pieces.values()) used.set(part.path, (used.get(part.path) ?? 0) + 1);
  return ledger.cell('kit converters', () => ledger.keys('kit/parts').filter((id) => ledger.at(`kit/parts/${id}/kind`) === 'converter').map((id) => new PartView(ledger, id)))
    .filter((part) => countOf(part) > (used.get(part.path) ?? 0));
}
