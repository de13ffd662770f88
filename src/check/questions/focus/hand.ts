import { focus } from '../../../standards/assumptions/focus.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Judgement, Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { shotName } from '../../quantities/shotName.ts';
import { eachPulled } from '../../quantities/eachDriven.ts';
import { outOfReach } from '../../quantities/focusReach.ts';
import { type HandWheel, handWheel } from '../../quantities/handWheel.ts';
import { shotRing, type ShotRing } from '../../quantities/ringAngle.ts';
import { isTurned } from '../../quantities/ringTurner.ts';
import { shotMoves } from '../../quantities/shotMoves.ts';
import { question } from '../../question.ts';
import type { ShotSubject } from '../../subjects.ts';

export const hand = question({
  id: 'focus.hand',
  asks: 'Is the move within one turn of the hand, and where do the stops sit?',
  kind: 'immediate',
  explains:
    'The turn of the wheel between the ends of the shot: of a wheel on the rods by its gears, of a hand unit by the throw it is mapped over. What one grip of the hand turns is common practice; beyond it the hand lets go and takes hold ' +
    'again in the middle of the move. The working gives the angle of the wheel at the two ends of the shot: there sit the A and B stops for whoever pulls alone. ' +
    'A wheel whose own stops come before the ends of the move cannot make it at all.',
  sources: ['common practice'],
  subjects: eachPulled,
  ask: (asking, subject) => {
    if (outOfReach(asking, subject) || !isTurned(asking, subject)) return null;
    const wheel = handWheel(asking, subject);
    if (wheel === undefined) return null;
    const ends = endsOnWheel(asking, subject, wheel);
    if (ends === undefined) return null;
    const wheelTurn = ends.farDeg === ends.nearDeg ? 0 : Math.abs(ends.nearDeg - ends.farDeg);
    const short = tooShort(asking, subject, wheel, { ends, wheelTurn });
    return short ?? judged(asking, subject, wheel, { ends, wheelTurn });
  },
});

/** Where the wheel stands at the farthest and the nearest of a shot, from the far end of the scale on. */
interface WheelEnds {
  readonly farMm: number;
  readonly nearMm: number;
  readonly farDeg: number;
  readonly nearDeg: number;
}

function endsOnWheel(asking: Asking, subject: ShotSubject, wheel: HandWheel): WheelEnds | undefined {
  const distances = shotMoves(asking, subject.shot).map(({ distanceMm }) => distanceMm);
  const [nearMm, farMm] = [Math.min(...distances), Math.max(...distances)];
  if (nearMm === farMm) return undefined;
  const ring = shotRing(asking, subject);
  return { farMm, nearMm, farDeg: wheelAt(ring, wheel, farMm), nearDeg: wheelAt(ring, wheel, nearMm) };
}

function wheelAt({ scale, angleAt }: ShotRing, { ringDegPerDeg }: HandWheel, distanceMm: number): number {
  return Math.abs(angleAt(distanceMm) - scale.angleAt(scale.farMm)) / ringDegPerDeg;
}

interface Move {
  readonly ends: WheelEnds;
  readonly wheelTurn: number;
}

/** The wheel's own stops come first. */
function tooShort(asking: Asking, subject: ShotSubject, wheel: HandWheel, { ends, wheelTurn }: Move): Judgement | undefined {
  const stops = wheel.piece.part.read('handWheel/hardStops') === true;
  if (wheel.mapped || !stops || wheelTurn <= wheel.turn.value) return undefined;
  return judgeYes({
    yes: false,
    says: { holds: '', fails: `${wheel.piece.name} comes to its own stop before the end of ${shotName(asking, subject)}.` },
    needs: { amount: { value: wheelTurn, unit: 'deg' }, from: 'turn of the wheel between the ends of the shot' },
    has: { amount: { value: wheel.turn.value, unit: 'deg' }, from: `from stop to stop of ${wheel.piece.name}` },
    steps: stopSteps(wheel, ends),
    mends: wheel.onBoard ? [{ says: `A gear of ${leastTeeth(wheel, wheelTurn)} teeth or more on the wheel`, use: 1, costs: 'marks on the wheel come closer together' }] : [],
  });
}

/** Teeth with which the wheel just makes the move between its stops. */
function leastTeeth({ piece, turn }: HandWheel, wheelTurn: number): number {
  return Math.ceil(((piece.part.read('handWheel/gear/teeth') as number) * wheelTurn) / turn.value);
}

function judged(asking: Asking, subject: ShotSubject, wheel: HandWheel, { ends, wheelTurn }: Move): Judgement {
  const grip = asking.assume(focus.handTurnDeg);
  const shot = shotName(asking, subject);
  const { name } = wheel.piece;
  return judgeRatio({
    needs: { amount: { value: wheelTurn, unit: 'deg' }, from: `of ${name}${wheel.mapped ? ', mapped over the whole throw' : ', by its gears'}` },
    has: { amount: { value: grip.value, unit: 'deg' }, from: `one grip of the hand ${origin(grip)}` },
    says: {
      holds: `${shot} is within one turn of the hand.`,
      tight: `${shot} takes the whole turn of a hand.`,
      fails: `${shot} turns ${name} further than a hand goes: it must be gripped again in the move.`,
    },
    steps: [{ says: 'a degree of the wheel turns the ring', amount: { value: wheel.ringDegPerDeg, unit: 'deg' } }, ...stopSteps(wheel, ends)],
    mends: wheelTurn > grip.value ? mends(wheel, wheelTurn, grip.value) : [],
  });
}

/** A mapped wheel has its zero at the far end of the scale; one on the rods may be engaged anywhere. */
const stopSteps = ({ mapped }: HandWheel, { farMm, nearMm, farDeg, nearDeg }: WheelEnds): Step[] =>
  mapped
    ? [
        { says: `A stop, ${tape(farMm)}: from the far end of the wheel`, amount: { value: farDeg, unit: 'deg' } },
        { says: `B stop, ${tape(nearMm)}: from the far end of the wheel`, amount: { value: nearDeg, unit: 'deg' } },
      ]
    : [{ says: `A stop at ${tape(farMm)}, wherever the gear is engaged; B stop at ${tape(nearMm)}, further by`, amount: { value: Math.abs(nearDeg - farDeg), unit: 'deg' } }];

const tape = (mm: number): string => printAmount({ value: mm / 1000, unit: 'm' });

function mends(wheel: HandWheel, wheelTurn: number, gripDeg: number): Mend[] {
  const crank: Mend = wheel.onBoard
    ? { says: 'A crank or a whip on the wheel, turned from the wrist', costs: 'marks on the wheel are harder to meet' }
    : { says: `Map ${printNumber(gripDeg)}° of the wheel over the part of the throw that the shot uses`, use: 1, costs: `each mark becomes ${printNumber(gripDeg / wheelTurn, 2)} times as wide` };
  return [crank, { says: 'Start with the arm crossed under, so that the middle of the move lies at ease' }];
}
