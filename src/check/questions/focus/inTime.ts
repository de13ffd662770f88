import { printAmount } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import { judgeRatio } from '../../judge.ts';
import { shotName } from '../../quantities/shotName.ts';
import { eachPulled } from '../../quantities/eachDriven.ts';
import { outOfReach } from '../../quantities/focusReach.ts';
import { type RingDrive, gearsOf, ringDrive, runOf, turnsAtAll } from '../../quantities/ringDrive.ts';
import { fastestTurn } from '../../quantities/shotMoves.ts';
import { question } from '../../question.ts';

export const inTime = question({
  id: 'focus.inTime',
  asks: 'Is the motor quick enough for the fastest move?',
  kind: 'immediate',
  explains:
    'The fastest that the ring has to turn in the shot, from the ring’s own scale, against the fastest that the motor turns it under the torque of that ring on that day. People and racks start and stop smoothly: ' +
    'the peak of a minimum-jerk move is 1.875 times its mean. What the motor takes to come up to speed is in the simulated pull, not here. A shot without movement does not ask this, nor one whose motor stalls anyway.',
  sources: ['torque-speed line of a permanent-magnet motor, as in textbooks', 'Flash & Hogan 1985: minimum jerk'],
  subjects: eachPulled,
  ask: (asking, subject) => {
    if (outOfReach(asking, subject)) return null;
    const found = ringDrive(asking, subject);
    if (found === undefined || !turnsAtAll(found)) return null;
    const fastest = fastestTurn(asking, subject);
    if (fastest === undefined) return null;
    const { ringRpm, fullThrowS, motorTorqueNm } = runOf(found);
    const has = 6 * ringRpm;
    const shot = shotName(asking, subject);
    const { motor, ring } = found;
    const between = `${tape(fastest.fromMm)} → ${tape(fastest.toMm)} in ${printAmount({ value: fastest.seconds, unit: 's' })}`;
    return judgeRatio({
      needs: { amount: { value: fastest.degPerS, unit: 'deg/s' }, from: `peak of ${between}${fastest.rack ? ', a rack' : ''}` },
      has: { amount: { value: has, unit: 'deg/s' }, from: `${motor.piece.name} under the torque of ${ring.name}` },
      says: {
        holds: `${motor.piece.name} keeps up with ${shot}.`,
        tight: `${motor.piece.name} only just keeps up with ${shot}.`,
        fails: `${motor.piece.name} is too slow for ${shot}: the ring trails the move.`,
      },
      steps: [
        { says: 'turn of the ring in that move', amount: { value: fastest.turnDeg, unit: 'deg' } },
        { says: `torque asked of the motor; the ring wants ${found.torque.says}`, amount: { value: motorTorqueNm, unit: 'N·m' } },
        { says: 'from end to end it takes', amount: { value: fullThrowS, unit: 's' } },
      ],
      mends: fastest.degPerS > 0.9 * has ? mends(found, fastest.degPerS) : [],
    });
  },
});

const tape = (mm: number): string => printAmount({ value: mm / 1000, unit: 'm' });

/** Other gears on the motor: a larger one turns the ring quicker, until its torque is spent. */
function mends(found: RingDrive, wanted: number): Mend[] {
  const { piece, teeth: fitted } = found.motor;
  const now = 6 * runOf(found).ringRpm;
  return gearsOf(piece.part)
    .filter((teeth) => teeth !== fitted)
    .flatMap((teeth): Mend[] => {
      const run = runOf(found, { teeth });
      if (6 * run.ringRpm <= now) return [];
      const says = `${teeth}-tooth gear on ${piece.name}`;
      return [{ says, edit: { says, patches: [{ op: 'add', path: `${piece.path}/gearTeeth`, value: teeth }] }, use: wanted / (6 * run.ringRpm), costs: `it stands still at ${printAmount({ value: run.ringStallNm, unit: 'N·m' })} at the ring` }];
    })
    .toSorted((a, b) => (a.use ?? 0) - (b.use ?? 0))
    .slice(0, 2);
}
