import { printAmount, printNumber } from '../../../units/print.ts';
import { judgeRatio } from '../../judge.ts';
import { shotName } from '../../quantities/shotName.ts';
import { eachPulled } from '../../quantities/eachDriven.ts';
import { outOfReach } from '../../quantities/focusReach.ts';
import { handWheel, stepDegOf } from '../../quantities/handWheel.ts';
import { isTurned } from '../../quantities/ringTurner.ts';
import { shotMoves } from '../../quantities/shotMoves.ts';
import { tightestOf } from '../../quantities/sharpTurn.ts';
import { question } from '../../question.ts';

export const step = question({
  id: 'focus.step',
  asks: 'Is the smallest step of the hand unit finer than the depth?',
  kind: 'immediate',
  explains:
    'A hand unit counts its turn in steps; mapped over the throw of the ring each is a small turn of the ring, and focus can lie up to half a step beside where the hand holds it. That half step is held against ' +
    'how far the ring may stand beside the subject before it is soft, where the shot leaves least. Wheels without steps do not ask this.',
  sources: ['common practice'],
  subjects: eachPulled,
  ask: (asking, subject) => {
    if (outOfReach(asking, subject) || !isTurned(asking, subject)) return null;
    const wheel = handWheel(asking, subject);
    if (wheel === undefined) return null;
    const stepDeg = stepDegOf(wheel);
    if (stepDeg === 0) return null;
    const tightest = tightestOf(asking, subject, shotMoves(asking, subject.shot).map(({ distanceMm }) => distanceMm));
    if (tightest === undefined || tightest.turn.oneWayDeg === Infinity) return null;
    const shot = shotName(asking, subject);
    return judgeRatio({
      needs: { amount: { value: stepDeg / 2, unit: 'deg' }, from: `half a step of ${wheel.piece.name}, at the ring` },
      has: { amount: { value: tightest.turn.oneWayDeg, unit: 'deg' }, from: `of the ring stay sharp on either side of ${printAmount({ value: tightest.distanceMm / 1000, unit: 'm' })}` },
      says: {
        holds: `The steps of ${wheel.piece.name} are finer than the depth of ${shot}.`,
        tight: `One step of ${wheel.piece.name} takes nearly the depth of ${shot}.`,
        fails: `${wheel.piece.name} steps over the depth of ${shot}: no step of it is sharp for certain.`,
      },
      steps: [
        { says: `${printNumber(wheel.turn.value)}° of the wheel in ${printNumber(wheel.turn.value / (stepDeg / wheel.ringDegPerDeg), 6)} steps; a degree of it turns the ring`, amount: { value: wheel.ringDegPerDeg, unit: 'deg' } },
        { says: 'steps within the depth', amount: { value: (2 * tightest.turn.oneWayDeg) / stepDeg, unit: 'count' } },
      ],
      mends: stepDeg / 2 > tightest.turn.oneWayDeg ? [{ says: 'Map the wheel over the part of the throw that the shot uses, not over the whole', costs: 'the map must be set back for the next shot' }] : [],
    });
  },
});
