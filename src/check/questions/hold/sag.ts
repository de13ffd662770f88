import { carriedWords } from '../../../assembly/hold/carriedOn.ts';
import { secondContact } from '../../../assembly/hold/secondContact.ts';
import { heldFast } from '../../../assembly/hold/underWeight.ts';
import { hold } from '../../../standards/assumptions/hold.ts';
import { printAmount } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { allWeighed } from '../../quantities/allWeighed.ts';
import { forceNotes, stiffnessWords } from '../../quantities/forceNotes.ts';
import { heldByNothing } from '../../quantities/heldByNothing.ts';
import { type Hanging, type Sag, sagOf } from '../../quantities/sagOf.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

const SHOWN = 3;
/** Share of a sag below which what adds to it is not named. */
const LITTLE = 0.02;
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
    const { worst, turns, unit, limit } = worstOf(asking, found);
    const { name } = worst.piece;
    return allWeighed(judgeRatio({
      needs: { amount: { value: worst.amount, unit }, from: `${turns ? 'turn' : 'shift'} of ${name} against the camera body (${stiffnessWords(asking)})`, word: turns ? 'turns' : 'shifts' },
      has: { amount: { value: limit.value, unit }, from: `seen from there on ${origin(limit)}`, word: 'allowed' },
      says: {
        holds: `Nothing sags to speak of; ${name} ${turns ? 'turns' : 'shifts'} most.`,
        tight: `${name} hangs nearly as far out of line with the camera as is seen.`,
        fails: `${name} ${turns ? 'turns' : 'hangs'} out of line with the camera under the weight: ${weakest(asking, subject, worst)} most.`,
      },
      steps: [
        ...worst.from.slice(0, SHOWN).filter(({ amount }) => amount > LITTLE * worst.amount).map(({ hold: { joint, type }, amount }): Step => ({ says: `comes from ${carriedWords(asking.ledger, subject.setup, subject.glass, joint)}, ${type.name}`, amount: { value: amount, unit } })),
        ...(Math.abs(worst.bending) > LITTLE * worst.amount ? [{ says: 'bending of rods', amount: { value: worst.bending, unit } }] : []),
        other(found.shifted, found.turned, turns),
        ...(found.blockDeg === undefined ? [] : [{ says: 'the block hangs out of line with the sensor by', amount: { value: found.blockDeg, unit: 'deg' as const } }]),
      ],
      mends: worst.amount > 0.9 * limit.value ? asking.cures(() => mends(asking, subject, found)) : [],
      notes: forceNotes(asking.ledger, subject),
    }), rig?.unweighed ?? []);
  },
});

const other = (shifted: Hanging, turned: Hanging, turns: boolean): Step =>
  turns ? { says: `furthest out of its place: ${shifted.piece.name}`, amount: { value: shifted.amount, unit: 'mm' } } : { says: `turned most: ${turned.piece.name}`, amount: { value: turned.amount, unit: 'deg' } };

/** The piece furthest beyond what is allowed of it, by shift or by turn. */
function worstOf(asking: Asking, { shifted, turned }: Sag) {
  const [mm, deg] = [asking.assume(hold.sagMm), asking.assume(hold.sagDeg)];
  const turns = turned.amount / deg.value > shifted.amount / mm.value;
  return turns ? { worst: turned, turns, unit: 'deg' as const, limit: deg } : { worst: shifted, turns, unit: 'mm' as const, limit: mm };
}

/** The piece that is off is seldom the one that gives. */
function weakest({ ledger }: Asking, { setup, glass }: SetupGlass, { piece, from, bending }: Hanging): string {
  const [most] = from;
  if (most === undefined || bending > most.amount) return 'rods bend';
  const { a, b } = most.hold.joint;
  return a.piece === piece || b.piece === piece ? `its joint to ${(a.piece === piece ? b : a).piece.name} gives` : `${carriedWords(ledger, setup, glass, most.hold.joint)} gives`;
}

/** A second contact at the joint that it comes from most; at the next, where that does not do. */
function mends(asking: Asking, subject: SetupGlass, found: Sag): Mend[] {
  const { worst, limit } = worstOf(asking, found);
  const now = worst.amount / limit.value;
  const rig = heldFast(asking.ledger, subject.setup, subject.glass);
  const all: Mend[] = [];
  for (const { hold: held } of worst.from.slice(0, TRIED)) {
    const contact = rig === undefined ? undefined : secondContact(held, rig);
    const after = contact === undefined ? undefined : sagOf(asking, subject, contact.variation);
    if (contact === undefined || after === undefined) continue;
    const then = worstOf(asking, after);
    const use = then.worst.amount / then.limit.value;
    const costs = use === 0 ? 'nothing gives any more' : `${then.worst.piece.name} then ${then.turns ? 'turns' : 'shifts'} most, by ${printAmount({ value: then.worst.amount, unit: then.unit })}`;
    // Two joints of one arm are helped by the same second arm.
    if (use < 0.95 * now && !all.some(({ says }) => says === `Put ${contact.says}`)) all.push({ says: `Put ${contact.says}`, use, costs });
    if (use <= 1) break;
  }
  return all;
}
