import { NoAnswer } from '../../../calc/calculator.ts';
import { printAmount } from '../../../units/print.ts';
import type { Judgement } from '../../answer.ts';
import { describeFigure } from '../../describeFigure.ts';
import { judgeYes } from '../../judge.ts';
import { focusRing } from '../../quantities/focusRing.ts';
import { type RingScale, focusScaleOf } from '../../quantities/focusScaleOf.ts';
import { shotsWith } from '../../quantities/lightThrough.ts';
import { shotName } from '../../quantities/shotName.ts';
import { shotDistances } from '../../quantities/shotDistances.ts';
import { opticalPath } from '../../../assembly/opticalPath.ts';
import type { Asking } from '../../Asking.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const scale = question({
  id: 'focus.scale',
  asks: 'Is there a scale for the ring, over all that is shot with it?',
  kind: 'immediate',
  explains:
    'The scale tells the ring’s angle at each distance: it serves the marks on the hand unit, the stops, the printed strips, and every other question of focus. It is made of taped marks, which a smooth curve over one over the distance joins; five ' +
    'serve a focuser in front. Failing those, of the lead of the helicoid; failing that, of the throw and the closest distance alone, with the way between them reckoned: enough to plan with, not to pull by. ' +
    'Marks must run one way from far to near. Distances run from the sensor plane, or from the front where the part says so.',
  sources: ['Fritsch & Butland 1984 (the curve)', 'common practice: five taped marks'],
  subjects: (ledger) => eachGlass(ledger).filter(({ setup, glass }) => opticalPath(ledger, setup, glass).focusedBy !== undefined),
  ask: (asking, subject) => {
    const { part, name } = focusRing(asking, subject);
    const found = tried(asking, subject);
    if (found instanceof NoAnswer) {
      return judgeYes({ yes: false, says: { holds: '', fails: `The marks of ${name} do not make a scale. ${found.message}` }, mends: [{ says: `Look at the marks of ${name} in the kit: a distance or an angle is mistyped` }] });
    }
    return judged(asking, subject, found, { name, measure: describeFigure(part, 'focus/marks').measure });
  },
});

function tried(asking: Asking, subject: SetupGlass): RingScale | NoAnswer {
  try {
    return focusScaleOf(asking, subject);
  } catch (thrown) {
    if (thrown instanceof NoAnswer) return thrown;
    throw thrown;
  }
}

function judged(asking: Asking, subject: SetupGlass, found: RingScale, { name, measure }: { name: string; measure: string | undefined }): Judgement {
  const beyond = shotsBeyond(asking, subject, found);
  const estimate = found.from === 'ends';
  return judgeYes({
    yes: true,
    caution: estimate || beyond.length > 0,
    says: {
      holds: `${name} has a scale.`,
      tight: estimate ? `The scale of ${name} is only reckoned from its two ends: good to plan with, not to pull by.` : `The scale of ${name} ends before ${beyond.join(', ')} does.`,
      fails: '',
    },
    steps: [
      { says: `made of ${found.says}` },
      { says: `from ${tape(found.farMm)} to ${tape(found.nearMm)}, a turn of`, amount: { value: found.throwDeg, unit: 'deg' } },
    ],
    mends: estimate || beyond.length > 0 ? [{ says: measure ?? 'Tape five marks round the ring and read their angles', costs: 'a quarter of an hour' }] : [],
  });
}

/** Names of the shots that want a distance farther than the farthest mark; too near is asked under picture. */
function shotsBeyond(asking: Asking, subject: SetupGlass, { farMm }: RingScale): string[] {
  return shotsWith(asking, subject)
    .filter((shot) => asking.ledger.at(`shots/${shot}/subject`) !== undefined && asking.ledger.at(`shots/${shot}/diopter`) === undefined && shotDistances(asking, shot).farMm > farMm)
    .map((shot) => shotName(asking, { shot }));
}

const tape = (mm: number): string => printAmount({ value: mm / 1000, unit: 'm' });
