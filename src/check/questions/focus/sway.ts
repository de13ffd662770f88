import { printAmount } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { shotName } from '../../quantities/shotName.ts';
import { origin } from '../../origin.ts';
import { type Focusing, depthOf, focusing } from '../../quantities/depthAt.ts';
import { eachPulled } from '../../quantities/eachDriven.ts';
import { outOfReach } from '../../quantities/focusReach.ts';
import { shotDistances } from '../../quantities/shotDistances.ts';
import { swayOf } from '../../quantities/swayOf.ts';
import { stopDown } from '../../stopDown.ts';
import { question } from '../../question.ts';
import type { ShotSubject } from '../../subjects.ts';

export const sway = question({
  id: 'focus.sway',
  asks: 'Does the sway of the operator stay within the depth?',
  kind: 'immediate',
  explains:
    'A camera on a shoulder or in the hands moves towards its subject and away while nobody means to move. Marks know nothing of it, and a puller at a station sees it late. How far it sways, either way, ' +
    'against the depth at the nearest point of the shot, the shorter side. Above 1 the picture breathes in and out of focus however well it is pulled. Nothing is published on the sway of handheld cameras: film a ruler.',
  sources: ['common practice; no published figures'],
  subjects: eachPulled,
  ask: (asking, subject) => {
    const swayed = swayOf(asking, subject);
    if (swayed === undefined || outOfReach(asking, subject)) return null;
    const { nearMm } = shotDistances(asking, subject.shot);
    if (nearMm === Infinity) return null;
    const how = focusing(asking, subject);
    const spare = shorterSide(how, nearMm);
    const shot = shotName(asking, subject);
    return judgeRatio({
      needs: { amount: { value: swayed.value, unit: 'mm' }, from: `sway either way ${origin(swayed)}`, word: 'sways' },
      has: { amount: { value: spare, unit: 'mm' }, from: `depth ahead of the subject at ${printAmount({ value: nearMm / 1000, unit: 'm' })}, the shorter side`, word: 'depth' },
      says: { holds: `The sway of the camera stays within the depth of ${shot}.`, tight: `The sway of the camera nearly fills the depth of ${shot}.`, fails: `${shot} sways in and out of focus at its nearest.` },
      mends: swayed.value > 0.9 * spare ? mends(asking, subject, how, { nearMm, swayMm: swayed.value }) : [],
    });
  },
});

function shorterSide(how: Focusing, focusMm: number): number {
  const { nearMm, farMm } = depthOf(how, focusMm);
  return Math.min(focusMm - nearMm, farMm - focusMm);
}

function mends(asking: Asking, subject: ShotSubject, how: Focusing, { nearMm, swayMm }: { nearMm: number; swayMm: number }): Mend[] {
  const useAt = (fNumber: number) => swayMm / shorterSide({ ...how, fNumber }, nearMm);
  return [...stopDown(asking, subject, [subject.shot], useAt), { says: 'Lean on something, or shoot it from sticks', costs: 'another feel' }];
}
