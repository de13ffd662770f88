import { jobLimit } from '../../../standards/assumptions/sight.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { setOn } from '../../quantities/lineEdits.ts';
import { type Seen, seenBy } from '../../quantities/seenBy.ts';
import { unseenPicture } from '../../quantities/unseen.ts';
import { sharpness } from '../../quantities/sharpness.ts';
import { type SeenBlur, visibleBlur } from '../../quantities/visibleBlur.ts';
import { question } from '../../question.ts';
import { type ViewerSubject, eachViewer } from '../../subjects.ts';

export const focus = question({
  id: 'sight.focus',
  asks: 'Can focus be judged on this screen at all?',
  kind: 'immediate',
  explains:
    'The smallest blur on the sensor that this viewer can see, limited by the lines left of the picture on its way, by the panel and by the eye, against what the delivery still calls sharp. ' +
    'A puller should see nearly that; a director may miss more. A punch-in magnifies panel and eye, but not lines that the way has lost. The viewer\'s own factor is found by detuning until they call it soft.',
  sources: ['acuity of 1 arcminute (20/20)', 'blur wanted by job: common practice; no study concerns judging focus on a monitor itself'],
  subjects: (ledger) => eachViewer(ledger).filter((subject) => ['pull focus', 'operate', 'direct'].includes(ledger.at(`needs/viewers/${subject.viewer}/job`) as string)),
  ask: (asking, subject) => {
    const blind = unseenPicture(asking.ledger, subject);
    if (blind !== undefined) return blind;
    const seen = seenBy(asking.ledger, subject);
    const found = visibleBlur(asking, subject);
    const plain = visibleBlur(asking, subject, 1);
    if (seen === undefined || found === undefined || plain === undefined) return null;
    const sharp = sharpness(asking, subject);
    const limit = asking.assume(jobLimit(seen.job, 'BlurRatio'));
    const has = sharp.value * limit.value;
    return judgeRatio({
      needs: { amount: { value: found.blurMm, unit: 'mm' }, from: `smallest blur ${seen.name} sees${found.zoom === 1 ? '' : `, punched in ${printNumber(found.zoom)}×`}; limited by the ${found.limitedBy}`, word: 'sees blur from' },
      has: { amount: { value: has, unit: 'mm' }, from: `${printNumber(limit.value)} × the circle of ${printAmount({ value: sharp.value, unit: 'mm' })} (${sharp.says}), for ${seen.job}`, word: 'must see' },
      says: {
        holds: `${seen.name} can judge focus on ${seen.screen.name}.`,
        tight: `${seen.name} can only just judge focus on ${seen.screen.name}.`,
        fails: `${seen.name} cannot see on ${seen.screen.name} whether it is sharp.`,
      },
      steps: [
        ...(found.zoom === 1 ? [] : [{ says: 'without punch-in', amount: { value: plain.blurMm, unit: 'mm' as const } }]),
        ...(found.viewerRatio === 1 ? [] : [{ says: 'the viewer\'s own factor', amount: { value: found.viewerRatio, unit: 'ratio' as const } }]),
      ],
      mends: found.blurMm <= has ? [] : mends(asking, subject, seen, found, has),
      notes: seen.job === 'pull focus' ? ['Pullers also work from tape, marks and rangefinder, not the picture alone.'] : [],
    });
  },
});

/** Larger punch-ins that the screen offers, and a nearer eye; none where the lines on the way are the limit. */
function mends(asking: Asking, subject: ViewerSubject, seen: Seen, now: SeenBlur, has: number): Mend[] {
  const zooms = (seen.screen.part.facet('screen')?.zooms ?? []).filter((zoom) => zoom > now.zoom).toSorted((a, b) => a - b);
  return zooms.flatMap((zoom): Mend[] => {
    const use = (visibleBlur(asking, subject, zoom)?.blurMm ?? Infinity) / has;
    const says = `punch in ${printNumber(zoom)}× on ${seen.screen.name}`;
    return use < now.blurMm / has ? [{ says, edit: setOn(seen.screen, 'zoom', zoom, says), use, costs: 'the frame is not seen meanwhile' }] : [];
  }).slice(0, 2);
}
