import { type LineFault, lineFaults } from '../../../assembly/lines/lineFaults.ts';
import type { WiredLine, WiredPort, Wiring } from '../../../assembly/lines/wiring.ts';
import { mating } from '../../../standards/connectors.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeYes } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { cableEdit, cablesThatFit } from '../../quantities/kitCables.ts';
import { movedTo } from '../../quantities/lineEdits.ts';
import { PLUG_CAUTION, faultSentence, lineName } from '../../quantities/lineWords.ts';
import { splitterMends } from '../../quantities/splitterMend.ts';
import { eachLine, lineOf, wiringOf } from '../../quantities/wired.ts';
import { question } from '../../question.ts';

export const fits = question({
  id: 'lines.fits',
  asks: 'Does every cable fit at both ends?',
  kind: 'immediate',
  explains:
    'A line must run from an output to an input of the same kind and signal, each socket holds one plug, and the plugs of the cable must go into both: connector, size and sex. ' +
    'Connectors in no table must be written alike at both ends. A cable may be turned round. What the cable then carries is asked by the questions on picture and power.',
  sources: ['connector standards as listed in standards/connectors', 'common practice'],
  subjects: (ledger) => eachLine(ledger).filter(({ line }) => !line.endsWith('+')),
  ask: (asking, subject) => {
    const line = lineOf(asking, subject);
    const wired = wiringOf(asking, subject);
    const [worst, ...others] = lineFaults(wired, line).toSorted((a, b) => weight(b) - weight(a));
    if (worst?.kind === 'no cable') throw new NotEntered([{ path: `${line.path}/cable`, says: `the cable from ${lineName(line)}` }]);
    const fit = worst?.kind === 'plug' ? worst.mating.fits : undefined;
    const [unsure, loose] = [fit === 'unknown', fit === 'loose'];
    const sentence = worst === undefined ? '' : faultSentence(line, worst);
    return judgeYes({
      yes: worst === undefined || unsure || loose,
      caution: loose,
      says: { holds: fitting(line), tight: sentence, fails: sentence },
      steps: [worst, ...others].flatMap((fault) => (fault === undefined ? [] : { says: detail(line, fault) })),
      mends: worst === undefined || unsure ? [] : mends(asking, wired, line, worst),
      notes: [...(unsure ? ['Whether plug or socket is not stated at one end.'] : []), ...(worst === undefined ? [] : [PLUG_CAUTION])],
    });
  },
});

const fitting = (line: WiredLine): string =>
  line.direct === true ? `${line.to.piece.name} plugs straight into ${line.from.piece.name}.` : `${line.cable?.name ?? 'The cable'} fits from ${lineName(line)}.`;
const weight = (fault: LineFault): number => (fault.kind !== 'plug' ? 10 : { yes: 0, unknown: 1, loose: 2, dead: 8, no: 9 }[fault.mating.fits]);
const detail = (line: WiredLine, fault: LineFault): string => (fault.kind === 'plug' ? fault.mating.says : faultSentence(line, fault));

function mends(asking: Asking, wired: Wiring, line: WiredLine, fault: LineFault): Mend[] {
  if (fault.kind === 'socket taken') {
    const free = freeSockets(wired, line, fault.port);
    const isOutlet = fault.port.key === line.from.key && line.from.port.kind === 'power';
    return free.length > 0 || !isOutlet ? free : splitterMends(asking.ledger, wired, fault.port, fault.by, line, false);
  }
  if (fault.kind !== 'plug' && fault.kind !== 'cable for something else') return [];
  const found = cablesThatFit(asking.ledger, wired, line);
  return found.slice(0, 2).map((cable) => ({ says: `${cable.name} instead`, edit: cableEdit(line, cable) }));
}

/** Sockets of the same device that are free, of the same way, kind and connector. */
function freeSockets(wired: Wiring, line: WiredLine, taken: WiredPort): Mend[] {
  const atOutput = taken.key === line.from.key;
  const free = (wired.portsOf.get(taken.piece.ref) ?? []).filter(
    ({ key, port }) =>
      key !== taken.key && port.kind === taken.port.kind && port.way === taken.port.way && port.video?.signal === taken.port.video?.signal && port.power?.from === taken.port.power?.from &&
      sameSocket(port, taken.port) && !wired.into.has(key) && !wired.outOf.has(key),
  );
  return free.slice(0, 1).map((port) => ({ says: `the ${port.name} of ${port.piece.name} is free`, edit: movedTo(line, atOutput ? 'from' : 'to', port) }));
}

/** A socket that holds the same plug: it would mate with whatever mates with the other. */
const sameSocket = (a: WiredPort['port'], b: WiredPort['port']): boolean =>
  a.sex === b.sex && mating({ connector: a.connector, sex: 'neutral' }, { connector: b.connector, sex: 'neutral' }).fits === 'yes';
