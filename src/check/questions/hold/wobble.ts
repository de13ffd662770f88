import { carriedWords } from '../../../assembly/hold/carriedOn.ts';
import type { JointHold } from '../../../assembly/hold/jointHold.ts';
import { type RigNetwork, rigNetwork } from '../../../assembly/hold/rigNetwork.ts';
import { secondContact } from '../../../assembly/hold/secondContact.ts';
import { hold } from '../../../standards/assumptions/hold.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { cannotJudge, judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { allWeighed } from '../../quantities/allWeighed.ts';
import { forceNotes, stiffnessWords } from '../../quantities/forceNotes.ts';
import { heldByNothing } from '../../quantities/heldByNothing.ts';
import { ownSwings } from '../../quantities/ownSwings.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const wobble = question({
  id: 'hold.wobble',
  asks: 'Is the rig stiff enough not to swing by itself?',
  kind: 'studied',
  explains:
    'The placed pieces as rigid bodies, their joints as springs in their own axes, rods as beams between their clamps, held fast where the purpose says that it stands (head, shoulder, vehicle, gimbal; free where nothing holds it): the give of a person or of the legs is not the rig’s. The lowest frequency at which it swings is held against what steps and hands excite; ' +
    'the joint with the largest share of the swing’s energy rules it, and a second contact there helps most. Stiffnesses that were not measured are estimates, a third to three times: read the order of the joints, not the hertz.',
  sources: ['finite elements of beams and springs: Logan, A First Course in the Finite Element Method', 'stiffness of joints: estimates; hang a known weight on a known arm to measure one'],
  subjects: eachGlass,
  ask: (asking, { setup, glass }) => {
    const rig = rigNetwork(asking.ledger, setup, glass);
    if (rig === undefined) return null;
    const { network, stands } = rig;
    if (network.freeMotions.length > 0) return heldByNothing(asking.ledger, { setup, glass }, rig);
    const swing = ownSwings(asking.ledger, { setup, glass }, { count: 1 })[0];
    if (swing === undefined) return cannotJudge('Nothing in the rig itself swings: none of its joints gives.');
    const { mode, shares } = swing;
    const ruling = shares.find(({ spring }) => spring !== 'ground')?.spring;
    const wanted = asking.assume(hold.wobbleHz);
    const where = ruling === undefined || ruling === 'ground' ? stands.says : carriedWords(asking.ledger, setup, glass, ruling.joint);
    const steps = shares.slice(0, 3).map(({ spring, share }): Step => ({
      says: `share of the swing in ${spring === 'ground' ? `what holds the rig, ${stands.says}` : `${carriedWords(asking.ledger, setup, glass, spring.joint)}, ${spring.type.name}`}`,
      amount: { value: share, unit: 'share' },
    }));
    return allWeighed(judgeRatio({
      needs: { amount: { value: wanted.value, unit: 'Hz' }, from: `above what steps and hands excite ${origin(wanted)}` },
      has: { amount: { value: mode.frequencyHz, unit: 'Hz' }, from: `lowest swing of the rig itself, ${stands.contacts.length === 0 ? stands.says : 'held fast where it stands'} (${stiffnessWords(asking)})` },
      says: { holds: `The rig is stiff; ${where} gives first.`, tight: `The rig is only just stiff enough; ${where} gives first.`, fails: `The rig swings at ${printNumber(mode.frequencyHz, 2)} Hz: ${where} gives most.` },
      steps,
      mends: 0.9 * mode.frequencyHz < wanted.value ? mends(asking, { setup, glass }, rig, { ruling, hz: mode.frequencyHz, wantedHz: wanted.value }) : [],
      notes: forceNotes(asking.ledger, { setup, glass }),
    }), rig.unweighed);
  },
});

interface Ruled {
  readonly ruling: JointHold | 'ground' | undefined;
  readonly hz: number;
  readonly wantedHz: number;
}

/** The same rig with a second contact at the joint that rules the swing. */
function mends({ ledger }: Asking, subject: SetupGlass, rig: RigNetwork, { ruling, hz, wantedHz }: Ruled): Mend[] {
  const contact = ruling === undefined || ruling === 'ground' ? undefined : secondContact(ruling, rig);
  if (contact === undefined) return [];
  const then = ownSwings(ledger, subject, { count: 1, variation: contact.variation })[0]?.mode.frequencyHz ?? Infinity;
  if (then < 1.02 * hz) return [];
  return [{ says: `Put ${contact.says}`, use: wantedHz / then, costs: Number.isFinite(then) ? `it then swings at ${printAmount({ value: then, unit: 'Hz' })} at the lowest` : 'nothing in the rig then swings' }];
}
