import { radioMode } from '../../../assembly/lines/nets.ts';
import type { Leg } from '../../../assembly/lines/picture.ts';
import { jobLimit } from '../../../standards/assumptions/sight.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { JOB_VERB, seenBy } from '../../quantities/seenBy.ts';
import { unseenPicture } from '../../quantities/unseen.ts';
import { type ChainDelay, videoChainDelay } from '../../quantities/videoChainDelay.ts';
import { modeEdit } from '../../quantities/modeEdit.ts';
import { question } from '../../question.ts';
import { eachViewer } from '../../subjects.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';

export const delay = question({
  id: 'sight.delay',
  asks: 'Does each viewer see the picture soon enough for the job?',
  kind: 'immediate',
  explains:
    'Delays add up from the sensor to the light of the panel: camera output, loop-outs, converters, the transmitter\'s mode, the screen itself. Each is measured by filming a running stopwatch and the screen in one shot. ' +
    'What a job bears is common practice beside studies of reaction, pointing and head tracking; none concerns focus pulling itself, and a puller who works from marks bears more.',
  sources: ['Woods et al. 2015', 'MacKenzie & Ware 1993', 'So & Griffin 1995', 'common practice'],
  subjects: eachViewer,
  ask: (asking, subject) => {
    const blind = unseenPicture(asking.ledger, subject);
    if (blind !== undefined) return blind;
    const seen = seenBy(asking.ledger, subject);
    const chain = videoChainDelay(asking.ledger, subject);
    if (seen === undefined || chain === undefined) return null;
    const limit = asking.assume(jobLimit(seen.job, 'DelayMs'));
    const rateHz = seen.leg?.picture?.frameRateHz ?? 25;
    return judgeRatio({
      needs: { amount: { value: chain.value, unit: 'ms' }, from: `${printNumber((chain.value * rateHz) / 1000)} frames, ${printNumber(chain.low)} to ${printNumber(chain.high)} ms`, word: 'comes after' },
      has: { amount: { value: limit.value, unit: 'ms' }, from: `borne by the job "${seen.job}" ${origin(limit)}`, word: 'allowed' },
      says: {
        holds: `${seen.name} sees the picture on ${seen.screen.name} soon enough to ${JOB_VERB[seen.job]}.`,
        tight: `${seen.name} sees the picture on ${seen.screen.name} only just soon enough to ${JOB_VERB[seen.job]}.`,
        fails: `${seen.name} sees the picture on ${seen.screen.name} too late to ${JOB_VERB[seen.job]}.`,
      },
      steps: chain.stages.map(({ says, figure }) => ({ says, amount: { value: figure.value, unit: 'ms' } })),
      mends: chain.value <= limit.value ? [] : fasterModes(asking.ledger, chain, limit.value),
      notes: seen.job === 'pull focus' ? ['Pullers also work from tape, marks and rangefinder; the pull itself is simulated under focus.'] : [],
    });
  },
});

/** Modes of a transmitter on the way that would be sooner, and a cable in place of the air. */
function fasterModes(ledger: Ledger, chain: ChainDelay, limitMs: number): Mend[] {
  return chain.stages.flatMap(({ leg, figure }): Mend[] => {
    const transmitter = leg?.kind === 'air' ? leg.before?.piece : undefined;
    if (leg === undefined || transmitter === undefined) return [];
    const now = radioMode(transmitter);
    const modes = Object.entries(transmitter.part.facet('radio')?.modes ?? {}).filter(([mode]) => mode !== now);
    const faster = modes.flatMap(([mode, { name }]): Mend[] => {
      const other = transmitter.part.figure(`radio/modes/${mode}/delayMs`);
      if (other === undefined || other.value >= figure.value || !takes(leg, mode)) return [];
      const heightPx = transmitter.part.read(`radio/modes/${mode}/heightPx`) as number | undefined;
      return [{
        says: `the mode ${name} on ${transmitter.name}, for all its receivers`, edit: modeEdit(ledger, transmitter, mode, name), use: (chain.value - figure.value + other.value) / limitMs,
        ...(heightPx === undefined ? {} : { costs: `everybody on it then sees ${heightPx} lines` }),
      }];
    });
    const cable: Mend = { says: `a cable instead of the air: ${printAmount({ value: chain.value - figure.value, unit: 'ms' })}`, use: (chain.value - figure.value) / limitMs, costs: 'the viewer is tethered' };
    return [...faster.toSorted((a, b) => (a.use ?? 0) - (b.use ?? 0)), cable];
  });
}

const takes = ({ piece }: Leg, mode: string): boolean => Object.hasOwn(piece.part.facet('radio')?.modes ?? {}, mode);
