import { judgeYes } from '../../judge.ts';
import { seenBy } from '../../quantities/seenBy.ts';
import { unseenPicture } from '../../quantities/unseen.ts';
import { question } from '../../question.ts';
import { eachViewer } from '../../subjects.ts';
import { legsOf } from '../../../assembly/lines/picture.ts';

export const resolution = question({
  id: 'sight.resolution',
  asks: 'Is a picture of more lines sent than the screen can show?',
  kind: 'immediate',
  explains: 'Lines beyond those of the panel, or beyond the poorest stage of the way, cost a faster link, a longer delay or a shorter reach, and nobody sees them. Nothing fails by it: it is room that could be used otherwise.',
  sources: ['common practice'],
  subjects: eachViewer,
  ask: (asking, subject) => {
    const blind = unseenPicture(asking.ledger, subject);
    if (blind !== undefined) return blind;
    const seen = seenBy(asking.ledger, subject);
    if (seen?.leg?.picture === undefined) return null;
    const { screen, leg } = seen;
    const panelLines = (screen.part.read('screen/heightPx') as number | undefined) ?? Infinity;
    const sent = legsOf(leg).flatMap(({ picture, piece }) => (picture === undefined ? [] : { lines: picture.heightPx, piece }));
    const fewest = Math.min(panelLines, ...sent.map(({ lines }) => lines));
    const wasted = sent.filter(({ lines }) => lines > panelLines * 1.001).toSorted((a, b) => b.lines - a.lines)[0];
    return judgeYes({
      yes: true,
      caution: wasted !== undefined,
      says: { holds: `${screen.name} shows every line that it is sent.`, tight: `${screen.name} shows ${panelLines} lines; the ${wasted?.lines ?? 0} that are sent are wasted on it.`, fails: '' },
      needs: { amount: { value: wasted?.lines ?? fewest, unit: 'px' }, from: wasted === undefined ? 'lines sent' : `sent to ${wasted.piece.name}` },
      has: { amount: { value: panelLines, unit: 'px' }, from: `lines of ${screen.name}` },
    });
  },
});
