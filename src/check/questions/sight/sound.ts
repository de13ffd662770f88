import { setupPieces } from '../../../assembly/setupPieces.ts';
import type { Figure } from '../../../shoot/ledger/figures.ts';
import { LIP_SYNC_MS } from '../../../standards/viewerJobs.ts';
import { printNumber } from '../../../units/print.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { origin } from '../../origin.ts';
import { seenBy } from '../../quantities/seenBy.ts';
import { unseenPicture } from '../../quantities/unseen.ts';
import { shootFigure } from '../../quantities/shootFigures.ts';
import { videoChainDelay } from '../../quantities/videoChainDelay.ts';
import { question } from '../../question.ts';
import { type ViewerSubject, eachViewer } from '../../subjects.ts';

export const sound = question({
  id: 'sight.sound',
  asks: 'Do picture and headphone sound stay together?',
  kind: 'immediate',
  explains:
    'Whoever watches on a late screen and hears on quick headphones hears words before lips part. The difference is held against what viewers notice and accept: they forgive late sound, as from far away, sooner than early sound. ' +
    'Above one half of the scale it is noticed, at one it is no longer accepted.',
  sources: ['ITU-R BT.1359-1 (from memory)'],
  subjects: (ledger) => eachViewer(ledger).filter(({ viewer }) => ledger.at(`needs/viewers/${viewer}/hearsSound`) === true),
  ask: (asking, subject) => {
    const blind = unseenPicture(asking.ledger, subject);
    if (blind !== undefined) return blind;
    const seen = seenBy(asking.ledger, subject);
    const chain = videoChainDelay(asking.ledger, subject);
    if (seen === undefined || chain === undefined) return null;
    const heard = soundDelay(asking, subject, seen.screen.build);
    const apart = chain.value - heard.value;
    const limits = apart >= 0 ? LIP_SYNC_MS.soundEarly : LIP_SYNC_MS.soundLate;
    const early = apart >= 0;
    return judgeRatio({
      needs: { amount: { value: Math.abs(apart), unit: 'ms' }, from: `picture ${printNumber(chain.value)} ms, sound ${printNumber(heard.value)} ms ${origin(heard)}`, word: 'apart by' },
      has: { amount: { value: limits.accepted, unit: 'ms' }, from: `${early ? 'early' : 'late'} sound that is accepted; noticed from ${limits.noticed} ms`, word: 'accepted' },
      says: {
        holds: `${seen.name} hears and sees together on ${seen.screen.name}.`,
        tight: `${seen.name} notices that the sound is ${early ? 'ahead of' : 'behind'} the picture on ${seen.screen.name}.`,
        fails: `${seen.name} hears the sound well ${early ? 'before' : 'after'} the picture on ${seen.screen.name}.`,
      },
      mends: early && apart > limits.noticed ? [{ says: `delay the headphone feed by ${printNumber(apart)} ms`, use: 0, costs: 'it is then late for anybody who also hears the room' }] : [],
      goodUpTo: limits.noticed / limits.accepted,
    });
  },
});

/** A listening device beside the screen, else what the needs state. */
function soundDelay(asking: Asking, { setup, glass }: ViewerSubject, build: string): Figure {
  const beside = [...setupPieces(asking.ledger, setup, glass).values()].find((piece) => piece.build === build && piece.part.has('sound'));
  const found = beside?.part.figure('sound/delayMs') ?? shootFigure(asking.ledger, 'needs/soundDelayMs');
  if (found === undefined) throw new NotEntered([{ path: 'needs/soundDelayMs', says: 'the delay of the sound in the headphones' }]);
  return found;
}
