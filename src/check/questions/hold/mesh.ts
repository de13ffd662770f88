import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { forceNotes, stiffnessWords } from '../../quantities/forceNotes.ts';
import { limitMend } from '../../quantities/limitMend.ts';
import { type MeshOpening, meshOpening } from '../../quantities/meshOpening.ts';
import { toothPushes } from '../../quantities/toothForce.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const mesh = question<SetupGlass>({
  id: 'hold.mesh',
  asks: 'Do the gears stay in mesh when they are pushed?',
  kind: 'immediate',
  explains:
    'The push of the teeth parts two gears: along the line of centres with tan 20° of its force, and through the give of whatever carries lens and motor. The motor is taken at a stop with all its torque, as it has until a limit is set; a follow focus with what the ring wants. The placed rig is solved as bodies on springs, the worse way of turning counts, ' +
    'and what the gears stand apart already is added. Involute teeth keep their ratio at any distance, but hand over from tooth to tooth only while their contact ratio stays above 1: beyond that they click, then ride out, and every mark is shifted. Stiffness of seats and clamps is an estimate, a third to three times.',
  sources: ['contact ratio: ISO 21771, rack ISO 53', 'finite elements of beams and springs: Logan', 'gears ride out of mesh when the motor pushes the lens: common practice'],
  subjects: (ledger) => eachGlass(ledger).filter(({ setup, glass }) => toothPushes(ledger, setup, glass).length > 0),
  ask: (asking, subject) => {
    const found = meshOpening(asking, subject);
    if (found === undefined) return null;
    const { push: { driver, ring }, placedMm, opensMm, forceN, says, rides } = found;
    const [motor, lens] = [driver.piece.name, ring.piece.name];
    const when = driver.piece.part.has('motor') ? 'when the motor drives into a stop' : 'when it is pulled';
    return judgeRatio({
      needs: { amount: { value: placedMm + opensMm, unit: 'mm' }, from: `${printAmount({ value: opensMm, unit: 'mm' })} by the push, ${printAmount({ value: placedMm, unit: 'mm' })} as they stand (${stiffnessWords(asking)})`, word: 'parts by' },
      has: { amount: { value: rides.ridesOutAtMm, unit: 'mm' }, from: 'at which a tooth lets go before the next takes over', word: 'rides out at' },
      says: {
        holds: `${motor} and ${lens} stay in mesh ${when}.`,
        tight: `${motor} all but rides out of the gear of ${lens} ${when}.`,
        fails: `${motor} rides out of the gear of ${lens} ${when}: every mark is then shifted.`,
      },
      steps: [
        { says, amount: { value: forceN, unit: 'N' } },
        { says: `contact ratio then ${printNumber(rides.contactRatio, 3)}; it should stay above 1` },
        { says: 'play that the opening adds at the teeth', amount: { value: rides.backlashMm, unit: 'mm' } },
      ],
      mends: rides.use > 0.9 ? asking.cures(() => mends(asking, subject, found)) : [],
      notes: ['Fingers clear of the gears.', ...forceNotes(asking.ledger, subject)],
    });
  },
});

function mends(asking: Asking, subject: SetupGlass, { push: { driver }, placedMm, opensMm, rides: { ridesOutAtMm } }: MeshOpening): Mend[] {
  const onGlass = meshOpening(asking, subject, 'riding rod');
  const closer: Mend[] = placedMm > 0.05 ? [{ says: `Swing ${driver.piece.name} in until the gears touch, and lock it`, use: opensMm / ridesOutAtMm }] : [];
  const riding: Mend[] = onGlass === undefined || onGlass.opensMm >= 0.9 * opensMm ? [] : [{
    says: `Carry ${driver.piece.name} on a collar round the barrel, or on a rod that rides with the glass`, use: (placedMm + onGlass.opensMm) / ridesOutAtMm, costs: 'some hundred grams more on the lens; with a longer rod it gives more',
  }];
  return [...closer, ...limitMend(asking, subject, driver.piece, (share) => (placedMm + opensMm * share) / ridesOutAtMm), ...riding];
}
