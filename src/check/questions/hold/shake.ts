import { carriedWords } from '../../../assembly/hold/carriedOn.ts';
import { rigNetwork } from '../../../assembly/hold/rigNetwork.ts';
import { secondContact } from '../../../assembly/hold/secondContact.ts';
import { opticalPath } from '../../../assembly/opticalPath.ts';
import { mechanics } from '../../../standards/assumptions/mechanics.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { forceNotes } from '../../quantities/forceNotes.ts';
import { sharesOf } from '../../quantities/ownSwings.ts';
import { type PictureShake, pictureShake } from '../../quantities/pictureShake.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const shake = question<SetupGlass>({
  id: 'hold.shake',
  asks: 'Does the picture bend when the focus reverses?',
  kind: 'studied',
  explains:
    'A motor that reverses pushes the other way at once, and so does a hand on a wheel on rods; the rig is left swinging in its own ways: each swing gets the work of the force in its shape over the square of its frequency. The picture moves as the camera nods and pans, by focal length times the angle, and as the lens shifts before the sensor; a sensor read line by line bends it: while it is read, the picture moves by up to twice the swing. ' +
    'The way that bends it most is shown, without the damping that a head or a shoulder gives. Stiffnesses that were not measured are estimates, a third to three times; a drive that reverses gently excites less.',
  sources: ['modal response to a step of force: any textbook of structural dynamics', 'bend by a line-by-line readout: derived (mechanics.rollingShutterWobble)', 'finite elements of beams and springs: Logan'],
  subjects: eachGlass,
  ask: (asking, subject) => {
    const { body, mode } = opticalPath(asking.ledger, subject.setup, subject.glass);
    if (body === undefined || mode === undefined) return null;
    const readout = asking.figure(body.part, `${mode}/rollingShutterMs`);
    const found = pictureShake(asking, subject, { readoutMs: readout.value });
    if (found === undefined) return null;
    const seen = asking.assume(mechanics.visibleWobblePx);
    const { by, amplitudePx, frequencyHz, seen: { bendPx, smearPx, jumpPx } } = found;
    return judgeRatio({
      needs: { amount: { value: bendPx, unit: 'px' }, from: `${by}: ${printNumber(amplitudePx)} px to either side at ${printNumber(frequencyHz)} Hz, read in ${printAmount({ value: readout.value, unit: 'ms' })} ${origin(readout)}`, word: 'bends by' },
      has: { amount: { value: seen.value, unit: 'px' }, from: `bend that is seen ${origin(seen)}`, word: 'allowed' },
      says: {
        holds: `When ${by}, the picture does not bend to be seen.`, tight: `When ${by}, the picture all but bends to be seen.`, fails: `When ${by}, the picture bends.`,
      },
      steps: [
        { says: 'smear of one line while it is exposed', amount: { value: smearPx, unit: 'px' } },
        { says: 'jump from one frame to the next', amount: { value: jumpPx, unit: 'px' } },
        ...rulingStep(asking, subject, found),
      ],
      mends: bendPx > 0.9 * seen.value ? mends(asking, subject, { found, readoutMs: readout.value, seenPx: seen.value }) : [],
      notes: ['The push is taken to change sides at once, and damping is left out: a gentle reversal, a damped head or a second hand shakes it less.', ...forceNotes(asking.ledger, subject)],
    });
  },
});

function ruling({ ledger }: Asking, { setup, glass }: SetupGlass, { mode }: PictureShake) {
  const rig = rigNetwork(ledger, setup, glass);
  return rig === undefined ? undefined : { rig, most: sharesOf(rig, mode)[0] };
}

function rulingStep(asking: Asking, subject: SetupGlass, found: PictureShake) {
  const { rig, most } = ruling(asking, subject, found) ?? {};
  if (rig === undefined || most === undefined) return [];
  const where = most.spring === 'ground' ? `what holds the rig, ${rig.stands.says}` : carriedWords(asking.ledger, subject.setup, subject.glass, most.spring.joint);
  return [{ says: `share of the swing in ${where}`, amount: { value: most.share, unit: 'share' as const } }];
}

/** A second contact where the swing gives most; the push brought back to the glass. */
function mends(asking: Asking, subject: SetupGlass, { found, readoutMs, seenPx }: { readonly found: PictureShake; readonly readoutMs: number; readonly seenPx: number }): Mend[] {
  const { rig, most } = ruling(asking, subject, found) ?? {};
  const contact = rig === undefined || most === undefined || most.spring === 'ground' ? undefined : secondContact(most.spring, rig);
  const stiffer = contact === undefined ? undefined : pictureShake(asking, subject, { readoutMs, variation: contact.variation });
  const riding = pictureShake(asking, subject, { readoutMs, carriedBy: 'riding rod' });
  const worth = (then: PictureShake | undefined): then is PictureShake => then !== undefined && then.seen.bendPx < 0.95 * found.seen.bendPx;
  return [
    ...(worth(riding) ? [{ says: 'Carry the drive on a collar round the barrel, or on a rod that rides with the glass', use: riding.seen.bendPx / seenPx, costs: 'some hundred grams more on the lens' }] : []),
    ...(contact !== undefined && worth(stiffer) ? [{ says: `Put ${contact.says}`, use: stiffer.seen.bendPx / seenPx }] : []),
  ];
}
