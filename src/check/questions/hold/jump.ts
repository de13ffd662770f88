import { mechanics } from '../../../standards/assumptions/mechanics.ts';
import { printNumber } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { forceNotes, stiffnessWords } from '../../quantities/forceNotes.ts';
import type { CarriedBy } from '../../quantities/drivenFromGlass.ts';
import { type ImageJump, imageJump } from '../../quantities/imageJump.ts';
import { toothPushes } from '../../quantities/toothForce.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const jump = question<SetupGlass>({
  id: 'hold.jump',
  asks: 'Does the image hold still when the focus reverses?',
  kind: 'immediate',
  explains:
    'A gear on a rod pushes the lens sideways with the torque of its ring over the radius of its gear; the push falls back on whatever carries the motor or wheel. When the pull reverses, the push changes sides, and whatever gives between sensor and glass gives twice, plus the free play of the seat. ' +
    'The placed rig is solved as rigid bodies on springs, and what moves is turned into pixels, each with its sense: shift of the taking lens at its principal point; yaw of a block in front, f·θ·(1 − 1/q), which may work against that shift; turn of the camera itself, against a head, mount or gimbal that stays, or about the rig’s own mass where a shoulder or hands hold it; roll of a block, which turns its squeeze, so that verticals lean and corners shift. A focuser that shifts across its own axis is left out. Carried on a collar or on a rod that rides with the glass, the push comes back ' +
    'to the barrel it left, and the lever is gone. Stiffness of seats and clamps is an estimate, a third to three times: film a chart while the gear is pushed to and fro to know it.',
  sources: ['finite elements of beams and springs: Logan', 'spur gears: ISO 21771', 'shift and yaw: derived; roll: optics.squeezeSkew', 'common practice: a motor twists the lens in its mount, and a collar removes the lever'],
  subjects: (ledger) => eachGlass(ledger).filter(({ setup, glass }) => toothPushes(ledger, setup, glass).length > 0),
  ask: (asking, subject) => {
    const found = imageJump(asking, subject);
    if (found === undefined) return null;
    const seen = asking.assume(mechanics.visibleJumpPx);
    const { driver, ring } = found.push;
    const names = `${driver.piece.name} on ${ring.piece.name}`;
    return judgeRatio({
      needs: { amount: { value: found.cornerPx, unit: 'px' }, from: `at a corner; ${printNumber(found.centrePx)} px at the middle (${stiffnessWords(asking)})`, word: 'jumps' },
      has: { amount: { value: seen.value, unit: 'px' }, from: `jump that is seen on a rack ${origin(seen)}`, word: 'allowed' },
      says: {
        holds: `With ${names}, the image stays put when the pull reverses.`,
        tight: `With ${names}, the image just stays put when the pull reverses.`,
        fails: `With ${names}, the image jumps when the pull reverses.`,
      },
      steps: steps(found),
      mends: found.cornerPx > 0.9 * seen.value ? asking.cures(() => mends(asking, subject, found, seen.value)) : [],
      notes: forceNotes(asking.ledger, subject),
    });
  },
});

/** Ways that go against each other leave less than their sum by more than rounding shows. */
const CANCELS = 0.99;

function steps({ forceN, lensShiftMm, lensPx, yawPx, playPx, rollDeg, leanDeg, rollCornerPx, framePx, centrePx, cornerPx, push }: ImageJump): Step[] {
  const cancels = centrePx < CANCELS * (lensPx + yawPx + framePx + playPx);
  return [
    { says: `push of the teeth on ${push.ring.piece.name}: torque of the ring over ${printNumber(push.ringRadiusM * 1000)} mm`, amount: { value: forceN, unit: 'N' } },
    { says: `the taking lens shifts by ${printNumber(lensShiftMm * 1000)} µm from one side to the other`, amount: { value: lensPx, unit: 'px' } },
    { says: 'free play of its seat', amount: { value: playPx, unit: 'px' } },
    ...(yawPx === 0 && rollDeg === 0 ? [] : [
      { says: 'the block turns to the side', amount: { value: yawPx, unit: 'px' as const } },
      { says: `the block rolls by ${printNumber(rollDeg, 2)}°: verticals lean by ${printNumber(leanDeg, 2)}°, and a corner of the picture shifts`, amount: { value: rollCornerPx, unit: 'px' as const } },
    ]),
    { says: 'the camera itself turns', amount: { value: framePx, unit: 'px' } },
    { says: `all together at the middle${cancels ? ': they partly cancel, as they go different ways' : ''}`, amount: { value: centrePx, unit: 'px' } },
    ...(rollCornerPx === 0 ? [] : [{ says: 'and at a corner, with the roll of the block', amount: { value: cornerPx, unit: 'px' as const } }]),
  ];
}

/** The lever goes when the push comes back to the glass. */
const WAYS_OUT: readonly (readonly [by: CarriedBy, says: string])[] = [['riding rod', 'on a rod that is fixed to the glass and rides with it'], ['collar', 'on a collar round the barrel of the ring']];

function waysOut(asking: Asking, subject: SetupGlass, found: ImageJump) {
  return WAYS_OUT.flatMap(([by, says]) => {
    const then = imageJump(asking, subject, by);
    return then === undefined || then.cornerPx >= 0.98 * found.cornerPx ? [] : [{ says, instead: then }];
  });
}

/** Two that come to the same are one cure. */
function mends(asking: Asking, subject: SetupGlass, found: ImageJump, seenPx: number): Mend[] {
  const [riding, collar] = waysOut(asking, subject, found);
  const same = riding !== undefined && collar !== undefined && Math.abs(riding.instead.cornerPx - collar.instead.cornerPx) < 0.02 * collar.instead.cornerPx;
  const ways = same ? [{ ...riding, says: `${riding.says}, or ${collar.says}` }] : [riding, collar].filter((one) => one !== undefined);
  return ways.map(({ says, instead }) => ({
    says: `Carry ${found.push.driver.piece.name} ${says}`, use: instead.cornerPx / seenPx, costs: `jumps by ${printNumber(instead.cornerPx)} px at a corner, ${printNumber(instead.centrePx)} px at the middle; some hundred grams more on the lens`,
  }));
}
