import { opticalPath } from '../../../assembly/opticalPath.ts';
import { figureOf } from '../../../shoot/ledger/figures.ts';
import type { StatedFigure } from '../../../shoot/schema/basics.ts';
import { picture } from '../../../standards/assumptions/picture.ts';
import { printNumber } from '../../../units/print.ts';
import type { Judgement, Side, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio, judgeYes } from '../../judge.ts';
import { shotName } from '../../nameAt.ts';
import { origin } from '../../origin.ts';
import { type Depth, type Focusing, blurAt, depthOf, focusing, middleFocus } from '../../quantities/depthAt.ts';
import { outOfReach } from '../../quantities/focusReach.ts';
import { shotDistances } from '../../quantities/shotDistances.ts';
import { question } from '../../question.ts';
import { stopDown } from '../../stopDown.ts';
import { type ShotSubject, eachShot } from '../../subjects.ts';

export const depth = question({
  id: 'picture.depth',
  asks: 'Is there depth enough at this stop?',
  kind: 'immediate',
  explains:
    'Near and far limits at the nearest point of the shot, from the vertical focal length, the f-number behind the T-stop and what counts as sharp. Three forms with three datums: a focuser in front ' +
    '(the usual form would flatter depth by half at close range), a lens with its principal plane, or a thin lens from the sensor plane. ' +
    'A shot that somebody pulls must hold the depth it asks; where it asks none, the depth is shown, with a caution where it would not hold both eyes of a face turned by half a right angle. Whether the pull itself succeeds is asked under focus. ' +
    'A shot that nobody pulls is focused once, half way in dioptres, and its whole range, sway included, must stay sharp: the blur at its ends against what counts as sharp.',
  sources: ['Ray, Applied Photographic Optics; exact thin-lens form', 'front focuser: derived', 'Dodgson, Variation and extrema of human interpupillary distance, 2004 (from memory)'],
  subjects: eachShot,
  ask: (asking, subject) => {
    if (opticalPath(asking.ledger, subject.setup, subject.glass).lens === undefined || outOfReach(asking, subject)) return null;
    const how = focusing(asking, subject);
    const pulled = asking.ledger.at(`shots/${subject.shot}/pulledBy`) !== undefined;
    return pulled ? ofPulled(asking, subject, how) : ofUnpulled(asking, subject, how);
  },
});

function ofPulled(asking: Asking, subject: ShotSubject, how: Focusing): Judgement {
  const { nearMm } = shotDistances(asking, subject.shot);
  const shot = shotName(asking.ledger, subject.shot);
  const held = depthOf(how, nearMm);
  if (nearMm === Infinity || held.farMm === Infinity) return endless(shot, how, nearMm, held);
  const steps = limits(how, nearMm, held);
  const asked = depthAsked(asking, subject.shot);
  const face = asked === undefined ? asking.assume(picture.faceDepthMm) : undefined;
  const wanted = asked ?? face?.value ?? 0;
  const mends = held.totalMm * 0.9 < wanted ? stopDown(asking, subject, [subject.shot], (fNumber) => wanted / depthOf({ ...how, fNumber }, nearMm).totalMm) : [];
  const needs: Side = { amount: { value: wanted, unit: 'mm' }, from: face === undefined ? 'depth that the shot asks' : `both eyes of a face half turned ${origin(face)}` };
  const has: Side = { amount: { value: held.totalMm, unit: 'mm' }, from: `depth at the nearest, f/${printNumber(how.fNumber)}` };
  if (asked === undefined) {
    const says = { holds: `At its nearest, ${shot} has depth for a face.`, tight: `At its nearest, ${shot} has too little depth for both eyes of a half-turned face.`, fails: '' };
    return judgeYes({ yes: true, caution: held.totalMm < wanted, says, needs, has, steps, mends: held.totalMm < wanted ? mends : [] });
  }
  return judgeRatio({ needs, has, says: { holds: `${shot} has the depth it asks.`, tight: `${shot} has only just the depth it asks.`, fails: `${shot} has less depth than it asks.` }, steps, mends });
}

function depthAsked({ ledger }: Asking, shot: string): number | undefined {
  const path = `shots/${shot}/depthMm`;
  const stated = ledger.at(path) as StatedFigure | undefined;
  return stated === undefined ? undefined : figureOf(stated, path, 'sheet').value;
}

function ofUnpulled(asking: Asking, subject: ShotSubject, how: Focusing): Judgement {
  const sway = swayOf(asking, subject.shot);
  const asked = shotDistances(asking, subject.shot);
  const [nearMm, farMm] = [Math.max(asked.nearMm - sway, how.offsetMm + 1), asked.farMm + sway];
  const focusMm = middleFocus(how, nearMm, farMm);
  const softest = (fNumber: number) => Math.max(...[nearMm, farMm].map((subjectMm) => blurAt({ ...how, fNumber }, { focusMm, subjectMm })));
  const wanted = softest(how.fNumber);
  const held = depthOf(how, focusMm);
  const shot = shotName(asking.ledger, subject.shot);
  return judgeRatio({
    needs: { amount: { value: wanted, unit: 'mm' }, from: 'at both ends of the range, focus left half way in dioptres', word: 'blur' },
    has: { amount: { value: how.circleOfConfusionMm, unit: 'mm' }, from: 'that counts as sharp', word: 'allowed' },
    says: { holds: `${shot} stays sharp with nobody pulling.`, tight: `${shot} only just stays sharp with nobody pulling.`, fails: `${shot} runs out of the depth, and nobody is named to pull it.` },
    steps: [...(sway > 0 ? [{ says: 'sway of the camera, either way', amount: { value: sway, unit: 'mm' } as const }] : []), ...limits(how, focusMm, held)],
    mends: wanted > 0.9 * how.circleOfConfusionMm ? [...stopDown(asking, subject, [subject.shot], (fNumber) => softest(fNumber) / how.circleOfConfusionMm), { says: 'Name somebody to pull it' }] : [],
  });
}

/** Sharp to infinity: there is no amount to show. */
function endless(shot: string, how: Focusing, atMm: number, held: Depth): Judgement {
  const says = `${shot} is sharp from its near limit to infinity.`;
  return judgeYes({ yes: true, says: { holds: says, fails: says }, steps: limits(how, atMm, held) });
}

function limits(how: Focusing, focusMm: number, { nearMm, farMm }: Depth): Step[] {
  const tape = (says: string, mm: number): Step => ({ says, amount: { value: mm / 1000, unit: 'm' } });
  return [
    { says: `reckoned as ${how.says}${how.closeUp === undefined ? '' : `, through ${how.closeUp.name}`}` },
    { says: 'blur that counts as sharp', amount: { value: how.circleOfConfusionMm, unit: 'mm' } },
    tape('focus at', focusMm),
    tape('sharp from', nearMm),
    tape('sharp to', farMm),
  ];
}

function swayOf(asking: Asking, shot: string): number {
  const path = `shots/${shot}/swaySpread`;
  const stated = asking.ledger.at(path) as StatedFigure | undefined;
  return stated === undefined ? 0 : figureOf(stated, path, 'estimate').value;
}
