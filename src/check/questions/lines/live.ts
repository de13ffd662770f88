import { type VideoTrace, videoTrace } from '../../../assembly/lines/videoTrace.ts';
import { legsOf } from '../../../assembly/lines/picture.ts';
import type { WiredLine, WiredPort, Wiring } from '../../../assembly/lines/wiring.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import type { CameraMode } from '../../../shoot/schema/optics.ts';
import type { Mend } from '../../answer.ts';
import { judgeYes } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { cableEdit, cablesThatFit } from '../../quantities/kitCables.ts';
import { movedTo } from '../../quantities/lineEdits.ts';
import { socketName } from '../../quantities/lineWords.ts';
import { eachLine, lineOf, withGlass } from '../../quantities/wired.ts';
import { listed } from '../../quantities/listed.ts';
import { question } from '../../question.ts';

export const live = question({
  id: 'lines.live',
  asks: 'Is every camera output that is used live in this mode?',
  kind: 'immediate',
  explains:
    'Many bodies switch an output off in some recording modes, and nobody sees it until the mode is set. Each output of the camera with a cable in it is looked up in the mode of the setup. ' +
    'Cures are outputs that are live and free, and loop-outs further on.',
  sources: ['common practice'],
  subjects: (ledger) => eachLine(ledger, 'video').filter(({ line, ...wired }) => {
    const { setup, glass } = withGlass(ledger, wired);
    const from = videoTrace(ledger, setup, glass).wiring.byKey.get(line)?.from;
    return from !== undefined && isCameraOutput(from);
  }),
  ask: (asking, subject) => {
    const line = lineOf(asking, subject);
    const { piece, id } = line.from;
    const modeId = asking.ledger.at(`setups/${subject.setup}/mode`) as string;
    const modeName = (piece.part.read(`body/modes/${modeId}/name`) ?? modeId) as string;
    const path = `body/modes/${modeId}/outputs/${id}`;
    const output = piece.part.read(path) as Output | undefined;
    if (output === undefined) throw new NotEntered([{ path: `${piece.part.path}/${path}`, says: `what the ${socketName(line.from)} sends in ${modeName}` }]);
    const { setup, glass } = withGlass(asking.ledger, subject);
    const trace = videoTrace(asking.ledger, setup, glass);
    const lost = output.live ? [] : [...trace.into.values()].filter((leg) => leg.piece.part.has('screen') && legsOf(leg).some(({ port }) => port?.key === line.from.key));
    return judgeYes({
      yes: output.live,
      says: { holds: `The ${socketName(line.from)} is live in ${modeName}.`, fails: `The ${socketName(line.from)} is dead in ${modeName}.` },
      steps: lost.length === 0 ? [] : [{ says: `without it these stay dark: ${listed(lost.map(({ piece: screen }) => screen.name))}` }],
      mends: output.live ? [] : [...otherOutputs(trace.wiring, line, modeId), ...loops(trace, line), ...otherSignals(asking.ledger, trace.wiring, line, modeId)].slice(0, 3),
    });
  },
});

type Output = NonNullable<CameraMode['outputs']>[string];

const isCameraOutput = ({ piece, port }: WiredPort): boolean => piece.part.has('body') && port.video?.from === undefined;

/** Other outputs of the camera with the same signal that are live and free. */
function otherOutputs(wired: Wiring, line: WiredLine, modeId: string): Mend[] {
  const { piece, port, key } = line.from;
  return (wired.portsOf.get(piece.ref) ?? [])
    .filter((other) => other.key !== key && isCameraOutput(other) && other.port.video?.signal === port.video?.signal && !wired.outOf.has(other.key))
    .filter((other) => isLive(other, modeId))
    .map((other) => ({ says: `the ${socketName(other)} is live and free`, edit: movedTo(line, 'from', other) }));
}

/** Loop-outs that carry a picture and are free, where the cable would fit. */
function loops({ wiring, at }: VideoTrace, line: WiredLine): Mend[] {
  return [...wiring.ports.values()]
    .filter(({ key, piece, port }) => port.way === 'out' && port.video?.from !== undefined && piece.build === line.from.piece.build && piece.ref !== line.to.piece.ref && at.get(key)?.picture !== undefined && !wiring.outOf.has(key))
    .filter(({ port }) => port.video?.signal === line.from.port.video?.signal && port.connector === line.from.port.connector)
    .map((loop) => ({ says: `take it off the ${socketName(loop)}`, edit: movedTo(line, 'from', loop), costs: `${line.to.piece.name} then goes dark with ${loop.piece.name}; is the cable long enough` }));
}

/** Outputs of another signal that are live and free, where the far end takes that signal too and the kit has the cable. */
function otherSignals(ledger: Ledger, wired: Wiring, line: WiredLine, modeId: string): Mend[] {
  const { piece, port } = line.from;
  const isFree = ({ key }: WiredPort) => !wired.outOf.has(key) && !wired.into.has(key);
  const outputs = (wired.portsOf.get(piece.ref) ?? []).filter((one) => isCameraOutput(one) && isFree(one) && one.port.video?.signal !== port.video?.signal && isLive(one, modeId));
  const inputs = (wired.portsOf.get(line.to.piece.ref) ?? []).filter((one) => one.port.kind === 'video' && one.port.way === 'in' && isFree(one));
  return outputs.flatMap((from) =>
    inputs.filter((to) => to.port.video?.signal === from.port.video?.signal).slice(0, 1).flatMap((to) => {
      const [cable] = cablesThatFit(ledger, wired, { ...line, from, to });
      if (cable === undefined) return [];
      const patches = [...movedTo(line, 'from', from).patches, ...movedTo(line, 'to', to).patches, ...cableEdit(line, cable).patches];
      return [{ says: `the ${socketName(from)} is live: into the ${socketName(to)} with ${cable.name}`, edit: { says: `${from.name} of ${piece.name} to ${to.piece.name}`, patches } }];
    }),
  );
}

const isLive = ({ piece, id }: WiredPort, modeId: string): boolean => (piece.part.read(`body/modes/${modeId}/outputs/${id}`) as Output | undefined)?.live === true;
