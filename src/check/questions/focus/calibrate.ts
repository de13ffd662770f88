import { opticalPath } from '../../../assembly/opticalPath.ts';
import { printAmount } from '../../../units/print.ts';
import type { Judgement, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { describeFigure } from '../../describeFigure.ts';
import { judgeYes } from '../../judge.ts';
import { NotEntered } from '../../NotEntered.ts';
import { type CalibrationLimit, calibrationLimit } from '../../quantities/calibrationLimit.ts';
import { eachDriven } from '../../quantities/eachDriven.ts';
import { handWheel } from '../../quantities/handWheel.ts';
import { type RingDrive, ringDrive, turnsAtAll } from '../../quantities/ringDrive.ts';
import { question } from '../../question.ts';
import { type SetupGlass, glassesOf } from '../../subjects.ts';

export const calibrate = question({
  id: 'focus.calibrate',
  asks: 'Must the motor be calibrated for this lens, and can it be?',
  kind: 'immediate',
  explains:
    'Calibration drives the ring into both of its stops to learn where they are, so that the motor cannot force them later and the whole turn of the wheel serves the whole throw. It is needed wherever the ring changes at a swap, ' +
    'and again when a motor that forgets its map has lost power. It needs stops that are felt: hard ones; into soft ones the motor presses on, and where there are none it never ends. The torque limit that is set ' +
    'for it must turn the ring in the cold, and should be no higher: what is left over presses on the stops. A split gear bumps at its join, and a tooth that slips meanwhile shifts every mark.',
  sources: ['common practice'],
  subjects: eachDriven,
  ask: (asking, subject) => {
    const found = ringDrive(asking, subject);
    if (found === undefined || !turnsAtAll(found)) return null;
    if (handWheel(asking, subject)?.mapped === false) return null;
    return judgement(asking, subject, found);
  },
});

type EndStops = 'hard' | 'soft' | 'none';

function judgement(asking: Asking, subject: SetupGlass, found: RingDrive): Judgement {
  const { ring, motor } = found;
  const endStops = ring.part.read('focus/endStops') as EndStops | undefined;
  if (endStops === undefined) throw new NotEntered([{ ...describeFigure(ring.part, 'focus/endStops'), says: `whether ${ring.name} has hard end stops` }]);
  const limit = calibrationLimit(asking, found);
  const split = ring.part.read('focus/gear/split') === true;
  const refused = limit !== undefined && limit.atMotorNm === undefined;
  const minds = [...(endStops === 'soft' ? ['its stops are soft'] : []), ...(split ? ['its gear ring is split and bumps at the join'] : [])];
  const often = needed(asking, subject, found);
  return judgeYes({
    yes: endStops !== 'none' && !refused,
    caution: minds.length > 0,
    says: {
      holds: `${ring.name} can be calibrated: hard stops at both ends.`,
      tight: `${ring.name} must be watched while it is calibrated: ${minds.join(', and ')}.`,
      fails: endStops === 'none' ? `${ring.name} has no end stops: calibration would turn on for ever.` : `No torque limit of ${motor.piece.name} turns ${ring.name} through to its stops.`,
    },
    steps: [{ says: often }, ...limitSteps(found, limit)],
    mends: endStops === 'hard' && !refused ? [] : [{ says: 'Set both ends by hand on the hand unit, at infinity and at the closest mark', costs: 'a minute at each swap, and the eye decides' }],
    notes: ['Fingers, hair and cables clear while it calibrates.', ...(split ? ['A tooth that slips while it calibrates shifts every mark: check one mark by eye afterwards.'] : [])],
  });
}

/** When it has to be done. */
function needed({ ledger }: Asking, { setup, glass }: SetupGlass, { ring, motor }: RingDrive): string {
  const others = glassesOf(ledger, setup).filter((other) => other !== glass && opticalPath(ledger, setup, other).focusedBy?.part.id !== ring.part.id);
  const same = glassesOf(ledger, setup).length > 1 && others.length === 0;
  const power = motor.piece.part.read('motor/losesMap') === true ? `, and after every loss of power: ${motor.piece.name} forgets its map` : '';
  if (others.length > 0) return `needed at every swap to or from another ring${power}`;
  return `${same ? 'the same ring on every lens of the set: needed only when the motor was taken off' : 'needed once, and when the motor was taken off'}${power}`;
}

function limitSteps({ torque, ratio, efficiency }: RingDrive, limit: CalibrationLimit | undefined): Step[] {
  const ringNeeds: Step = { says: `the ring wants ${torque.says}` };
  if (limit?.atMotorNm === undefined) return [ringNeeds];
  const pressed = limit.atMotorNm * ratio * efficiency.value;
  return [
    ringNeeds,
    { says: `set the torque limit to ${printAmount({ value: limit.atMotorNm, unit: 'N·m' })}: it then presses on the stops with`, amount: { value: pressed, unit: 'N·m' } },
  ];
}
