import { pieceSetting } from '../../../assembly/setupPieces.ts';
import type { PieceMass } from '../../../assembly/hold/pieceMasses.ts';
import { PartView } from '../../../shoot/ledger/PartView.ts';
import { carry } from '../../../standards/assumptions/carry.ts';
import { TEAM_SHARE } from '../../../standards/liftingReach.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { LARGEST_USE, cannotJudge, judgeRatio } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { allWeighed } from '../../quantities/allWeighed.ts';
import { type BuildWeight, buildWeights, inWords, nothingWeighed, weightSteps } from '../../quantities/buildWeight.ts';
import { buildsInUse, isCamera, usesOf } from '../../quantities/buildsInUse.ts';
import { cautionsFor } from '../../quantities/estimateNote.ts';
import { type LiftedRig, type SetOn, liftedRig, setOn, staysBelow } from '../../quantities/liftedRig.ts';
import { type Lifting, type OneLift, oneLift } from '../../quantities/oneLift.ts';
import { countOfLoad, weightNotes } from '../../quantities/wholeMass.ts';
import { question } from '../../question.ts';

/** What was found of a build, for its cures. */
interface Found {
  readonly worst: BuildWeight;
  readonly lifted: Lifting;
  readonly rig: LiftedRig;
  readonly on: SetOn;
  readonly limits: OneLift;
  readonly purpose: string;
}

export const lift = question<{ readonly setup: string; readonly build: string }>({
  id: 'carry.lift',
  asks: 'Can one person lift it to where it works?',
  kind: 'immediate',
  explains:
    'The built camera with the heaviest glass of its setup, and what goes on each stand, against the recommended weight limit of the revised NIOSH lifting equation for one lift now and then: from the floor to the head, the shoulder or the chest, the hands at the handles or underneath, as far out as half the rig is deep. ' +
    'The limit is worked out where it is picked up and where it is set down, and the lower one counts, for a camera is set down with care. The mass over that limit is the lifting index; above 1 more and more people are strained. It protects nearly everybody, so that many can lift more, once. ' +
    'It covers lifting with two hands, not holding and not carrying, no slippery floor, no steps. Legs and stands are carried by themselves and are not in the weight; cables are, half at either plug, of one that leads away what hangs from its plug. A rig may slip or swing where a box does not.',
  sources: ['NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation', TEAM_SHARE.source],
  subjects: (ledger) => [
    ...ledger.keys('setups').map((setup) => ({ setup, build: ledger.at(`setups/${setup}/camera`) as string })),
    ...buildsInUse(ledger).flatMap((build) => usesOf(ledger, build).slice(0, 1).filter((use) => !isCamera(ledger, use, build)).map(({ setup }) => ({ setup, build }))),
  ],
  ask: (asking, { setup, build }) => {
    const { ledger } = asking;
    const purpose = ledger.at(`builds/${build}/purpose`) as string;
    const weights = buildWeights(ledger, setup, build, (piece) => !staysBelow(piece, purpose));
    const [worst] = weights;
    if (worst === undefined || worst.weighed.length === 0) return cannotJudge(nothingWeighed(weights));
    const use = { setup, glass: worst.glass };
    const [rig, on] = [liftedRig(ledger, use, build), setOn(ledger, use, build)];
    const lifted = liftingOf(asking, rig, on, worst.massG);
    const limits = oneLift(lifted);
    const glass = isCamera(ledger, use, build) ? `, with ${nameAt(ledger, 'glasses', worst.glass)}` : '';
    const name = `“${nameAt(ledger, 'builds', build)}”`;
    return allWeighed(judgeRatio({
      needs: { amount: { value: worst.massG, unit: 'g' }, from: `${countOfLoad(worst.weighed.length, worst)}${glass}`, word: 'weighs' },
      has: {
        amount: { value: limits.limitG, unit: 'g' }, word: 'limit',
        from: `one person, hands from ${inMm(lifted.fromMm)} to ${inMm(lifted.toMm)}, grip ${lifted.grip}; ${limits.worse} decides`,
      },
      says: {
        holds: `One person can lift ${name} ${on.says}.`, tight: `${name} is only just light enough for one person to lift ${on.says}.`,
        fails: `${name} is too heavy for one person to lift ${on.says}.`,
      },
      steps: [...weightSteps(ledger, weights), ...liftSteps(lifted, rig, limits), ...belowSteps(on)],
      mends: limits.index > 0.9 ? mends(asking, { worst, lifted, rig, on, limits, purpose }) : [],
      notes: [
        'By the equation for lifting with two hands; it does not cover holding or carrying. Pain is a reason to stop.', ...cautionsFor(purpose), ...weightNotes(worst),
        ...(rig.placed ? [] : ['The rig is not placed: its depth and the height of its handles are assumed.']),
      ],
    }), weights.flatMap(({ unweighed }) => unweighed));
  },
});

const inMm = (value: number): string => printAmount({ value: Math.round(value), unit: 'mm' });

function liftingOf(asking: Asking, rig: LiftedRig, on: SetOn, massG: number): Lifting {
  const startsAtMm = asking.assume(carry.startsAtMm).value;
  return { massG, fromMm: startsAtMm + rig.handsMm, toMm: on.baseMm + rig.handsMm, acrossMm: rig.acrossMm, grip: rig.grip, twistDeg: asking.assume(carry.twistDeg).value };
}

function liftSteps({ acrossMm }: Lifting, { handles }: LiftedRig, { pickedUpG, setDownG, index }: OneLift): Step[] {
  const held = handles > 1 ? 'by two handles' : handles === 1 ? 'by one handle and a hand underneath' : 'hands underneath, no handle';
  return [
    { says: `limit where it is picked up, ${held}, ${inMm(acrossMm)} deep`, amount: { value: pickedUpG, unit: 'g' } },
    { says: 'limit where it is set down', amount: { value: setDownG, unit: 'g' } },
    Number.isFinite(index) ? { says: 'lifting index', amount: { value: index, unit: 'ratio' } } : { says: 'hands this high, or this far out: not to be lifted so by one person' },
  ];
}

function belowSteps({ below }: SetOn): Step[] {
  const weighed = below.flatMap((piece) => piece.part.figure('massG')?.value ?? []);
  if (weighed.length === 0) return [];
  return [{ says: `besides, carried by itself: ${below.map(({ name }) => name).join(', ')}`, amount: { value: weighed.reduce((sum, one) => sum + one, 0), unit: 'g' } }];
}

/** Each cure by itself, worked out again; what does not help is left out. */
function mends(asking: Asking, found: Found): Mend[] {
  const index = Math.min(LARGEST_USE, found.limits.index);
  return [withTwo(asking, found), fromCart(asking, found), bare(found), lowered(asking, found), onThePlace(found)].filter((mend) => mend !== undefined).filter(({ use = 0 }) => use < index * 0.999);
}

const again = ({ lifted }: Found, change: Partial<Lifting>): number => Math.min(LARGEST_USE, oneLift({ ...lifted, ...change }).index);

function withTwo(asking: Asking, { limits }: Found): Mend {
  const costs = asking.ledger.keys('crew').length < 2 ? 'somebody to help, who is not in the crew' : 'a second pair of hands at every move';
  const times = 2 * TEAM_SHARE.two;
  return { says: `Lift it with two people: together they lift ${printNumber(times)} times what one does`, use: Math.min(LARGEST_USE, limits.index / times), costs };
}

function fromCart(asking: Asking, found: Found): Mend | undefined {
  const cartMm = asking.assume(carry.cartMm).value;
  if (asking.assume(carry.startsAtMm).value >= cartMm) return undefined;
  return { says: `Lift it from a cart or from cases ${inMm(cartMm)} high`, use: again(found, { fromMm: cartMm + found.rig.handsMm }), costs: 'a cart or cases where it is taken up, at every move' };
}

function bare(found: Found): Mend | undefined {
  const { worst } = found;
  const massG = worst.massG - worst.weighed.reduce((sum, one) => sum + comesOffG(one), 0);
  if (massG <= 0 || massG >= worst.massG) return undefined;
  return { says: `Lift it without glass and packs, ${inWords(massG)}, and put those on afterwards`, use: again(found, { massG }), costs: 'they go on at the place, at every move' };
}

function lowered(asking: Asking, found: Found): Mend | undefined {
  const loweredMm = asking.assume(carry.loweredMm).value;
  if (!['tripod', 'focus station', 'viewing station'].includes(found.purpose) || found.on.baseMm <= loweredMm) return undefined;
  return { says: `Lower it to ${inMm(loweredMm)} to set it on`, use: again(found, { toMm: loweredMm + found.rig.handsMm }), costs: 'raised again leg by leg, by two people' };
}

function onThePlace(found: Found): Mend | undefined {
  const heaviest = found.worst.weighed.reduce((most, one) => (one.massG > most.massG ? one : most));
  if (found.on.below.length === 0 || heaviest.massG >= found.worst.massG) return undefined;
  const says = `Build it up where it stands: the heaviest piece, ${heaviest.piece.name}, is ${inWords(heaviest.massG)}`;
  return { says, use: again(found, { massG: heaviest.massG }), costs: 'taken apart and balanced again at every move' };
}

/** Of a piece, what a grip of the hand takes off: glass and packs. */
function comesOffG({ piece, massG }: PieceMass): number {
  if (piece.fromGlass || piece.part.has('pack')) return massG;
  return (pieceSetting(piece, 'packs') ?? []).reduce((sum, id) => sum + (new PartView(piece.part.ledger, id).figure('massG')?.value ?? 0), 0);
}
