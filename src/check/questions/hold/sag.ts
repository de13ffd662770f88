import { secondContact } from '../../../assembly/hold/secondContact.ts';
import { heldFast } from '../../../assembly/hold/underWeight.ts';
import { hold } from '../../../standards/assumptions/hold.ts';
import { printAmount } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { forceNotes } from '../../quantities/forceNotes.ts';
import { heldByNothing } from '../../quantities/heldByNothing.ts';
import { type Hanging, sagOf } from '../../quantities/sagOf.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

const SHOWN = 3;
const TRIED = 2;

export const sag = question<SetupGlass>({
  id: 'hold.sag',
  asks: 'Does everything stay in its place under its own weight?',
  kind: 'immediate',
  explains:
    'The placed rig, held fast at what it stands on, under its own weight: how far each piece shifts and turns as seen from the camera body, from the give of every joint and the bending of rods. What shifts is seen as a crooked monitor or matte box, opens gears and takes the block out of line. Which joint it comes from is worked out by the method of the unit load: what each adds, in millimetres or degrees. ' +
    'Only the give is in it; whether an arm slips is asked of each joint that friction holds. Stiffnesses that were not measured are estimates, a third to three times: hang a known weight on a known arm.',
  sources: ['finite elements of beams and springs: Logan', 'unit load (Maxwell, Mohr): strength of materials', 'stiffness of joints: estimates'],
  subjects: eachGlass,
  ask: (asking, subject) => {
    const rig = heldFast(asking.ledger, subject.setup, subject.glass);
    if (rig !== undefined && rig.network.freeMotions.length > 0) return heldByNothing(asking.ledger, subject, rig);
    const found = sagOf(asking, subject);
    if (found === undefined) return null;
    const [mm, deg] = [asking.assume(hold.sagMm), asking.assume(hold.sagDeg)];
    const turns = found.turned.amount / deg.value > found.shifted.amount / mm.value;
    const worst = turns ? found.turned : found.shifted;
    const [unit, limit] = turns ? ['deg' as const, deg] : ['mm' as const, mm];
    const { name } = worst.piece;
    return judgeRatio({
      needs: { amount: { value: worst.amount, unit }, from: `${turns ? 'turn' : 'shift'} of ${name} against the camera body (stiffness estimated, a third to three times)`, word: turns ? 'turns' : 'shifts' },
      has: { amount: { value: limit.value, unit }, from: 'seen from there on (assumed, half to twice)', word: 'allowed' },
      says: {
        holds: `Nothing sags to speak of; ${name} gives most.`,
        tight: `${name} hangs nearly as far out of its place as is seen.`,
        fails: `${name} ${turns ? 'nods' : 'hangs out of its place'} under the weight of the rig.`,
      },
      steps: [
        ...worst.from.slice(0, SHOWN).filter(({ amount }) => amount > 0).map(({ hold: { joint, type }, amount }): Step => ({ says: `comes from ${joint.b.piece.name} on ${joint.a.piece.name}, ${type.name}`, amount: { value: amount, unit } })),
        ...(Math.abs(worst.bending) > 0.05 * worst.amount ? [{ says: 'bending of rods', amount: { value: worst.bending, unit } }] : []),
        other(found.shifted, found.turned, turns),
        ...(found.blockDeg === undefined ? [] : [{ says: 'the block hangs out of line with the sensor by', amount: { value: found.blockDeg, unit: 'deg' as const } }]),
      ],
      mends: worst.amount > 0.9 * limit.value ? mends(asking, subject, worst, { limit: limit.value, turns }) : [],
      notes: forceNotes(asking.ledger, subject),
    });
  },
});

const other = (shifted: Hanging, turned: Hanging, turns: boolean): Step =>
  turns ? { says: `furthest out of its place: ${shifted.piece.name}`, amount: { value: shifted.amount, unit: 'mm' } } : { says: `turned most: ${turned.piece.name}`, amount: { value: turned.amount, unit: 'deg' } };

/** A second contact at the joint that it comes from most; at the next, where that does not do. */
function mends(asking: Asking, subject: SetupGlass, worst: Hanging, { limit, turns }: { limit: number; turns: boolean }): Mend[] {
  const rig = heldFast(asking.ledger, subject.setup, subject.glass);
  const found: Mend[] = [];
  for (const { hold: held } of worst.from.slice(0, TRIED)) {
    const contact = rig === undefined ? undefined : secondContact(held, rig);
    const then = contact === undefined ? undefined : sagOf(asking, subject, contact.variation);
    if (contact === undefined || then === undefined) continue;
    const most = turns ? then.turned : then.shifted;
    const says = most.amount === 0 ? 'nothing gives any more' : `${most.piece.name} then gives most, by ${printAmount({ value: most.amount, unit: turns ? 'deg' : 'mm' })}`;
    if (most.amount < 0.95 * worst.amount) found.push({ says: `Put ${contact.says}`, use: most.amount / limit, costs: says });
    if (most.amount <= limit) break;
  }
  return found;
}
