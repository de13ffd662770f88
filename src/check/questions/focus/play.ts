import { printAmount, printNumber } from '../../../units/print.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import type { Judgement, Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { shotName } from '../../quantities/shotName.ts';
import { eachPulled } from '../../quantities/eachDriven.ts';
import { outOfReach } from '../../quantities/focusReach.ts';
import { type RingPlay, ringPlay } from '../../quantities/ringPlay.ts';
import { isTurned } from '../../quantities/ringTurner.ts';
import { shotMoves } from '../../quantities/shotMoves.ts';
import { type SharpTurn, sharpTurnAtStop, tightestOf } from '../../quantities/sharpTurn.ts';
import { stopDown } from '../../stopDown.ts';
import { question } from '../../question.ts';
import type { ShotSubject } from '../../subjects.ts';

export const play = question({
  id: 'focus.play',
  asks: 'Is the play smaller than the depth at the tightest point?',
  kind: 'immediate',
  explains:
    'All that turns freely at a reversal before the glass follows: the motor’s gear, the ring, the seats of the glass, the motor’s clamp. A mark set from one side and met from the other misses by the whole of it. ' +
    'It is held against how far the ring may stand beside the subject before that is soft, at the distance of the shot where that is least. Play that is not entered is assumed and listed; springs that give under ' +
    'load come on top, and are asked under hold.',
  sources: ['common practice: play must be nil; block the one gear, try the other'],
  subjects: eachPulled,
  ask: (asking, subject) => {
    if (outOfReach(asking, subject) || !isTurned(asking, subject)) return null;
    const tightest = tightestOf(asking, subject, shotMoves(asking, subject.shot).map(({ distanceMm }) => distanceMm));
    if (tightest === undefined) return null;
    const found = ringPlay(asking, subject);
    return tightest.turn.oneWayDeg === Infinity ? endless(asking, subject, found) : judged(asking, subject, found, tightest);
  },
});

function judged(asking: Asking, subject: ShotSubject, found: RingPlay, { distanceMm, turn }: { distanceMm: number; turn: SharpTurn }): Judgement {
  const shot = shotName(asking, subject);
  return judgeRatio({
    needs: { amount: { value: found.value, unit: 'deg' }, from: `play at the ring${found.parts.some(({ assumed }) => assumed) ? ', some of it assumed' : ''}` },
    has: { amount: { value: turn.oneWayDeg, unit: 'deg' }, from: `of the ring stay sharp on either side of ${printAmount({ value: distanceMm / 1000, unit: 'm' })}` },
    says: {
      holds: `The play is well within the depth of ${shot}.`,
      tight: `The play takes nearly all the depth of ${shot}.`,
      fails: `${shot}: a mark met from the other side is soft, since the play is larger than the depth.`,
    },
    steps: partSteps(found),
    mends: found.value > turn.oneWayDeg ? mends(asking, subject, found, { distanceMm, turn }) : [],
  });
}

function endless(asking: Asking, subject: ShotSubject, found: RingPlay): Judgement {
  const says = `${shotName(asking, subject)} stays sharp wherever the ring stands.`;
  return judgeYes({ yes: true, says: { holds: says, fails: says }, steps: partSteps(found) });
}

const partSteps = ({ parts }: RingPlay): Step[] =>
  parts.map(({ says, atRing, assumed }) => ({ says: `${says}, ${assumed ? `assumed ${printNumber(atRing.low)} to ${printNumber(atRing.high)}` : 'entered'}`, amount: { value: atRing.value, unit: 'deg' } }));

/** Taking the largest part out of the sum, meeting marks from one side, stopping down. */
function mends(asking: Asking, subject: ShotSubject, found: RingPlay, { distanceMm, turn }: { distanceMm: number; turn: SharpTurn }): Mend[] {
  const largest = found.parts.toSorted((a, b) => b.atRing.value - a.atRing.value)[0];
  const without: Mend[] = largest === undefined ? [] : [{ says: `Take the play out of the ${largest.says}`, use: (found.value - largest.atRing.value) / turn.oneWayDeg }];
  return [
    { says: 'Set the marks, and meet them, from one and the same side', use: 0, costs: 'a move that comes back still misses' },
    ...without,
    ...stopDown(asking, subject, [subject.shot], (fNumber) => found.value / sharpTurnAtStop(asking, subject, { distanceMm, fNumber })),
  ];
}
