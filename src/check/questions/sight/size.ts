import { sight } from '../../../standards/assumptions/sight.ts';
import { printAmount } from '../../../units/print.ts';
import { judgeRatio } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { origin } from '../../origin.ts';
import { seenBy } from '../../quantities/seenBy.ts';
import { unseen } from '../../quantities/unseen.ts';
import { shootFigure } from '../../quantities/shootFigures.ts';
import { shownOn } from '../../quantities/shownOn.ts';
import { question } from '../../question.ts';
import { eachViewer } from '../../subjects.ts';

export const size = question({
  id: 'sight.size',
  asks: 'Is the picture large enough from where each viewer stands?',
  kind: 'immediate',
  explains:
    'The height of the de-squeezed picture on the panel, bars left over, as an angle from the viewer\'s eye. A wide picture on a small panel is low: of five inches little more than a third of the height is left. ' +
    'What detail can be told apart is asked apart.',
  sources: ['geometry', 'least angle: estimate of common practice'],
  subjects: eachViewer,
  ask: (asking, subject) => {
    const blind = unseen(asking.ledger, subject);
    if (blind !== undefined) return blind;
    const seen = seenBy(asking.ledger, subject);
    if (seen === undefined) return null;
    const distance = shootFigure(asking.ledger, `${seen.path}/distanceMm`);
    if (distance === undefined) throw new NotEntered([{ path: `${seen.path}/distanceMm`, says: `from the eye of ${seen.name} to ${seen.screen.name}` }]);
    const { heightMm, widthMm } = shownOn(asking, subject, seen);
    const least = asking.assume(sight.leastPictureDeg);
    const angleDeg = (2 * Math.atan(heightMm / 2 / distance.value) * 180) / Math.PI;
    const nearestMm = heightMm / 2 / Math.tan((least.value * Math.PI) / 360);
    return judgeRatio({
      needs: { amount: { value: least.value, unit: 'deg' }, from: `height wanted ${origin(least)}` },
      has: { amount: { value: angleDeg, unit: 'deg' }, from: `${printAmount({ value: heightMm, unit: 'mm' })} high at ${printAmount({ value: distance.value, unit: 'mm' })} ${origin(distance)}` },
      says: {
        holds: `The picture on ${seen.screen.name} is large enough for ${seen.name}.`,
        tight: `The picture on ${seen.screen.name} is just large enough for ${seen.name}.`,
        fails: `The picture on ${seen.screen.name} is too small for ${seen.name}.`,
      },
      steps: [{ says: 'picture on the panel, width', amount: { value: widthMm, unit: 'mm' } }, { says: 'height', amount: { value: heightMm, unit: 'mm' } }],
      mends: angleDeg >= least.value ? [] : [{ says: `come as near as ${printAmount({ value: nearestMm, unit: 'mm' })}`, use: 1 }],
    });
  },
});
