import { freeKey } from '../../../shoot/edit/freeKey.ts';
import { isSound } from '../../../assembly/lines/lineFaults.ts';
import { powerTrace } from '../../../assembly/lines/powerTrace.ts';
import type { WiredLine, WiredPort, Wiring } from '../../../assembly/lines/wiring.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import type { PartView } from '../../../shoot/ledger/PartView.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import type { Mend } from '../../answer.ts';
import { judgeYes } from '../../judge.ts';
import { cablesThatFit } from '../../quantities/kitCables.ts';
import { newLine } from '../../quantities/lineEdits.ts';
import { PLUG_CAUTION, socketName } from '../../quantities/lineWords.ts';
import { splitterMends } from '../../quantities/splitterMend.ts';
import { eachPieceOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';

export const fed = question({
  id: 'power.fed',
  asks: 'Is everything that draws power fed?',
  kind: 'immediate',
  explains: 'Followed from every pack, plate and supply through splitters and regulators to the last device, across builds. A device with a draw or a supply socket that nothing reaches, and that has no pack of its own, stays dark.',
  sources: ['common practice'],
  subjects: (ledger) => eachPieceOf(ledger, ({ setup, glass }) => powerTrace(ledger, setup, glass).drawing),
  ask: (asking, subject) => {
    const { setup, glass } = withGlass(asking.ledger, subject);
    const trace = powerTrace(asking.ledger, setup, glass);
    const piece = trace.wiring.pieces.get(subject.piece);
    if (piece === undefined) return null;
    const unfed = trace.unfed.some(({ ref }) => ref === piece.ref);
    const source = trace.byPiece.get(piece.ref)?.supply.piece.name;
    const inputs = inputsOf(trace.wiring, piece);
    const line = inputs.flatMap(({ key }) => trace.wiring.into.get(key) ?? [])[0];
    return judgeYes({
      yes: !unfed,
      says: { holds: `${piece.name} is fed by ${source ?? 'its own pack'}.`, fails: line === undefined ? `${piece.name} gets no power.` : `${piece.name} gets no power: nothing feeds ${line.from.piece.name}, where its cable comes from.` },
      mends: unfed && line === undefined ? outlets(asking.ledger, trace.wiring, inputs) : [],
      notes: unfed ? [PLUG_CAUTION] : [],
    });
  },
});

const inputsOf = (wired: Wiring, { ref }: SetupPiece): WiredPort[] => (wired.portsOf.get(ref) ?? []).filter(({ port }) => port.kind === 'power' && port.way !== 'out');

/** Free outlets of the same build that the device's window allows, with a cable of the kit that fits; else a splitter in one that is taken. */
function outlets(ledger: Ledger, wired: Wiring, inputs: readonly WiredPort[]): Mend[] {
  const [input] = inputs;
  if (input === undefined || input.piece.fromGlass) return [];
  const { build } = input.piece;
  const suited = [...wired.ports.values()].filter(({ piece, port }) => port.kind === 'power' && port.way === 'out' && piece.build === build && !piece.fromGlass && voltsMeet(port, input.port));
  const name = freeKey(`power-${input.piece.id}`, ledger.keys(`builds/${input.piece.build}/lines`));
  const lineFrom = (from: WiredPort): WiredLine => ({ key: `${build}/${name}`, path: name, from, to: input, cable: undefined, turned: false, shared: false });
  const cables = new Map<string, PartView | undefined>();
  const cableFor = (from: WiredPort): PartView | undefined => {
    const plug = `${from.port.connector} ${from.port.sex ?? ''}`;
    if (!cables.has(plug)) cables.set(plug, isSound(lineFrom(from)) ? cablesThatFit(ledger, wired, lineFrom(from))[0] : undefined);
    return cables.get(plug);
  };
  const hasLines = ledger.has(`builds/${build}/lines`);
  const free = suited.filter(({ key }) => !wired.outOf.has(key)).flatMap((output): Mend[] => {
    const cable = cableFor(output);
    return cable === undefined ? [] : [{ says: `${cable.name} from the ${socketName(output)}`, edit: newLine(name, output, input, hasLines, cable.id), costs: 'one more load on it' }];
  });
  if (free.length > 0) return free.slice(0, 2);
  for (const outlet of suited) {
    const [held] = wired.outOf.get(outlet.key) ?? [];
    const cable = cableFor(outlet);
    const found = held === undefined || cable === undefined ? [] : splitterMends(ledger, wired, outlet, held, { ...lineFrom(outlet), cable }, true);
    if (found.length > 0) return found.slice(0, 1);
  }
  return [];
}

/** Stated windows that overlap; what is not stated is not held against it. */
function voltsMeet(out: WiredPort['port'], into: WiredPort['port']): boolean {
  const value = (figure: unknown, otherwise: number): number => (typeof figure === 'number' ? figure : typeof figure === 'object' && figure !== null ? (figure as { value: number }).value : otherwise);
  const { outputV, lowV, highV } = out.power ?? {};
  const [low, high] = [value(outputV ?? lowV, 0), value(outputV ?? highV, Infinity)];
  return high <= value(into.power?.highV, Infinity) && high >= value(into.power?.lowV, 0) && low < Infinity;
}
