import { nets, radioMode } from '../../../assembly/lines/nets.ts';
import { legsOf } from '../../../assembly/lines/picture.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import { jobLimit } from '../../../standards/assumptions/sight.ts';
import { viewerJob } from '../../../standards/viewerJobs.ts';
import { printNumber } from '../../../units/print.ts';
import type { Asking } from '../../Asking.ts';
import { cannotJudge, judgeYes } from '../../judge.ts';
import { modeEdit } from '../../quantities/modeEdit.ts';
import { whyDark } from '../../quantities/pictureLoss.ts';
import { type Seen, seenBy } from '../../quantities/seenBy.ts';
import { videoChainDelay } from '../../quantities/videoChainDelay.ts';
import { eachPieceOf, withGlass } from '../../quantities/wired.ts';
import { question } from '../../question.ts';
import { type ViewerSubject, eachViewer } from '../../subjects.ts';

export const mode = question({
  id: 'sight.mode',
  asks: 'Does the transmitter\'s mode serve everybody who watches through it?',
  kind: 'immediate',
  explains:
    'A transmitter has one mode for all its receivers, and modes trade detail against delay. Each mode is held against each viewer\'s job: the delay it bears, and the lines it can use on that screen. ' +
    'Where no mode serves all, it says which loses least, jobs that follow movement weighing more, and who loses. Whether the picture is too late at all is asked of each viewer apart.',
  sources: ['common practice'],
  subjects: (ledger) =>
    eachPieceOf(ledger, ({ setup, glass }) => nets(ledger, setup, glass).flatMap(({ carries, transmitters }) => (carries === 'video' ? transmitters.filter(({ part }) => Object.keys(part.facet('radio')?.modes ?? {}).length > 1) : []))),
  ask: (asking, subject) => {
    const whole = withGlass(asking.ledger, subject);
    const transmitter = nets(asking.ledger, whole.setup, whole.glass).flatMap(({ transmitters }) => transmitters).find(({ ref }) => ref === subject.piece);
    const now = transmitter === undefined ? undefined : radioMode(transmitter);
    if (transmitter === undefined || now === undefined) return null;
    const watchers = watchersOf(asking, whole.setup, transmitter);
    if (watchers.length === 0) return null;
    const lit = watchers.filter(({ seen }) => seen.leg?.picture !== undefined);
    if (lit.length === 0) return cannotJudge(`No picture comes through ${transmitter.name}.`, watchers.slice(0, 1).flatMap(({ seen }) => whyDark(asking.ledger, whole, seen.screen)));
    const modes = Object.entries(transmitter.part.facet('radio')?.modes ?? {}).flatMap(([id, { name }]) => tryMode(asking, transmitter, lit, { id, name, now }));
    const [best] = modes.toSorted((a, b) => a.loss - b.loss || Number(b.id === now) - Number(a.id === now));
    const current = modes.find(({ id }) => id === now);
    if (best === undefined || current === undefined) return null;
    const better = best.id !== now && best.loss < current.loss - 1e-9;
    return judgeYes({
      yes: true,
      caution: better || current.losers.length > 0,
      says: {
        holds: `The mode ${current.name} of ${transmitter.name} serves ${lit.map(({ seen }) => seen.name).join(' and ')}.`,
        tight: better ? `The mode ${best.name} of ${transmitter.name} would serve better than ${current.name}.` : `No mode of ${transmitter.name} serves all: in ${current.name} ${current.losers.map(({ name }) => name).join(' and ')} loses.`,
        fails: '',
      },
      steps: modes.map(({ name, losers, id }) => ({ says: `${name}${id === now ? ' (set now)' : ''}: ${losers.length === 0 ? 'serves all' : losers.map((one) => `${one.name} ${one.why}`).join('; ')}` })),
      mends: better ? [{ says: `the mode ${best.name}`, edit: modeEdit(asking.ledger, transmitter, best.id, best.name), ...(best.losers.length === 0 ? {} : { costs: best.losers.map(({ name, why }) => `${name} ${why}`).join('; ') }) }] : [],
    });
  },
});

interface Watcher {
  readonly seen: Seen;
  readonly subject: ViewerSubject;
}

/** Viewers whose picture comes through a transmitter. */
const watchersOf = (asking: Asking, setup: string, transmitter: SetupPiece): Watcher[] =>
  eachViewer(asking.ledger)
    .filter((subject) => subject.setup === setup)
    .flatMap((subject) => {
      const seen = seenBy(asking.ledger, subject);
      const through = seen?.leg !== undefined && legsOf(seen.leg).some(({ kind, before }) => kind === 'air' && before?.piece.ref === transmitter.ref);
      return seen !== undefined && through ? { seen, subject } : [];
    });

interface Tried {
  readonly id: string;
  readonly name: string;
  readonly loss: number;
  readonly losers: readonly { readonly name: string; readonly why: string }[];
}

/** What each viewer would lose in a mode: delay over what the job bears, and lines that both screen and job could use. */
function tryMode(asking: Asking, transmitter: SetupPiece, watchers: readonly Watcher[], { id, name, now }: { id: string; name: string; now: string }): Tried[] {
  const delays = [now, id].map((one) => transmitter.part.figure(`radio/modes/${one}/delayMs`)?.value);
  const [nowMs, thenMs] = delays;
  if (nowMs === undefined || thenMs === undefined) return [];
  const lines = (transmitter.part.read(`radio/modes/${id}/heightPx`) as number | undefined) ?? Infinity;
  const judged = watchers.flatMap(({ seen, subject }) => {
    const chain = videoChainDelay(asking.ledger, subject);
    const job = viewerJob(seen.job);
    if (chain === undefined || job === undefined) return [];
    const delayUse = (chain.value - nowMs + thenMs) / asking.assume(jobLimit(seen.job, 'DelayMs')).value;
    const useful = Math.min(job.usefulLines, (seen.screen.part.read('screen/heightPx') as number | undefined) ?? Infinity, sentLines(seen));
    const short = lines < useful ? useful / lines - 1 : 0;
    const late = Math.max(0, delayUse - 1);
    const why = late > 0 ? `sees it too late (${printNumber(chain.value - nowMs + thenMs)} ms)` : `gets ${lines} of ${useful} lines`;
    return { name: seen.name, late, short, loss: job.delayWeight * late + short, loses: late > 0 || (short > 0 && job.delayWeight < 2), why };
  });
  return [{ id, name, loss: judged.reduce((sum, { loss }) => sum + loss, 0), losers: judged.filter(({ loses }) => loses).map(({ name: who, why }) => ({ name: who, why })) }];
}

/** Lines of the picture before it goes on the air. */
function sentLines({ leg }: Seen): number {
  const air = leg === undefined ? undefined : legsOf(leg).find(({ kind }) => kind === 'air');
  return air?.before?.picture?.heightPx ?? Infinity;
}
