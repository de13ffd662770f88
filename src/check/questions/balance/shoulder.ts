import { carrierKind } from '../../../assembly/hold/carriers.ts';
import { gripsOf, standsOn } from '../../../assembly/hold/standsOn.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import type { Vector } from '../../../assembly/placing/Transform.ts';
import { setupPieces } from '../../../assembly/setupPieces.ts';
import { holdingEndurance } from '../../../calc/mechanics/holdingEndurance.ts';
import { packPlace } from '../../../calc/mechanics/packPlace.ts';
import { shoulderHold } from '../../../calc/mechanics/shoulderHold.ts';
import { weightN } from '../../../calc/mechanics/gravity.ts';
import { balance } from '../../../standards/assumptions/balance.ts';
import { mechanics } from '../../../standards/assumptions/mechanics.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend, Step } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { NotEntered } from '../../NotEntered.ts';
import { cannotJudge, judgeRatio } from '../../judge.ts';
import { origin } from '../../origin.ts';
import { allPlaced } from '../../quantities/allPlaced.ts';
import { allInBalance } from '../../quantities/allWeighed.ts';
import { cautionsFor } from '../../quantities/estimateNote.ts';
import { listed } from '../../quantities/listed.ts';
import { loadSlides, movedShare, roomAlong, settingFor, settingPatches } from '../../quantities/loadSlides.ts';
import { nothingBears } from '../../quantities/nothingBears.ts';
import { shootFigure } from '../../quantities/shootFigures.ts';
import { type ShoulderGust, shoulderGust } from '../../quantities/shoulderGust.ts';
import { type WholeMass, heaviestPack, leftOut, wholeMass } from '../../quantities/wholeMass.ts';
import { windSays } from '../../quantities/windOn.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const shoulder = question<SetupGlass>({
  id: 'balance.shoulder',
  asks: 'Does it sit balanced on the shoulder?',
  kind: 'immediate',
  explains:
    'The weight of the rig times the distance of its centre of mass ahead of the middle of the pad is what the hands must hold up (ahead) or pull down (behind), over the distance of the grips from the pad. That force is held against what hands hold for an hour without a rest, a twelfth of their strength (the mean of a published study), so that they are free to operate and to pull; how long the hands could bear it follows from a published endurance curve, a caution and no limit: ' +
    'for holding a camera no published limit exists. Outdoors the strongest gust of the days on which it is shot comes on top: its push on the outline of all that is placed, from the side that asks most of the hands; what tips the rig they hold up or down, what turns it about the shoulder they hold sideways. What rolls it lies on the shoulder and is left out, and nobody shields it. ' +
    'Where it does not balance, the place is worked out at which the pack would balance it, along the rig and at its own height.',
  sources: ['statics of rigid bodies', 'Björkstén and Jonsson 1977: force held for an hour', 'Rohmert 1960: endurance of a static hold, a caution', 'no published limit exists for a shoulder rig', 'drag: air of ISO 2533, a box 1.05', 'EN 1991-1-4, 7.4.3: the push beside the middle'],
  subjects: (ledger) => eachGlass(ledger).filter(({ setup }) => ledger.at(`builds/${ledger.at(`setups/${setup}/camera`) as string}/purpose`) === 'shoulder'),
  ask: (asking, subject) => {
    const found = onShoulder(asking, subject);
    if (typeof found === 'string') return cannotJudge(found);
    if (found === undefined) return null;
    const { whole, aheadMm, handsAheadMm, hold } = found;
    const rest = asking.assume(balance.restForceN);
    const still = Math.abs(hold.handForceN);
    const gust = gustOn(asking, subject, found);
    const force = gust?.handForceN ?? still;
    const way = aheadMm > 0 ? 'forward' : 'backward';
    return allPlaced(allInBalance(judgeRatio({
      needs: { amount: { value: force, unit: 'N' }, from: `${printAmount({ value: whole.massG, unit: 'g' })}, its centre ${printAmount({ value: Math.abs(aheadMm), unit: 'mm' })} ${aheadMm > 0 ? 'ahead of' : 'behind'} the pad, over ${printAmount({ value: handsAheadMm, unit: 'mm' })} to the hands${gust === undefined ? '' : `, in wind: ${windSays(gust.air, gust.areaMm2)}`}`, word: 'hands hold' },
      has: { amount: { value: rest.value, unit: 'N' }, from: `what both hands hold for an hour without a rest ${origin(rest)}`, word: 'with ease' },
      says: {
        holds: force < 0.25 * rest.value ? 'The rig sits on the shoulder by itself.' : 'The rig sits on the shoulder with light hands on it.',
        tight: still > 0.9 * rest.value ? `The rig leans ${way}: the hands just hold it at their ease.` : 'In a gust the hands just hold the rig at their ease.',
        fails: still > rest.value ? failing(still / rest.value, aheadMm) : 'In a gust the hands must hold more than they can all day.',
      },
      steps: [
        { says: 'moment about the pad', amount: { value: Math.abs(hold.momentNm), unit: 'N·m' } },
        { says: 'on the shoulder itself', amount: { value: hold.padForceN, unit: 'N' } },
        ...(gust === undefined ? [] : gustSteps(still, gust)),
        ...endurance(asking, subject, still),
        { says: 'with one hand off the grips, share of its strength that the other gives', amount: { value: (2 * force) / asking.assume(mechanics.handStrengthN).value, unit: 'share' } },
      ],
      mends: force > 0.9 * rest.value ? [...packMends(asking, subject, found, rest.value), ...padMend(asking, subject, found, rest.value), ...sheltered(still, gust, rest.value)] : [],
      notes: ['For holding a camera on a shoulder no published limit exists; pain is a reason to stop.', ...cautionsFor('shoulder'), ...leftOut(whole)],
    }), whole.unweighed), [whole]);
  },
});

/** Beyond so many times what hands hold at their ease it does not lean but falls when they let go for a moment. Common practice. */
const FALLS = 2;

function failing(use: number, aheadMm: number): string {
  const way = aheadMm > 0 ? 'forward' : 'backward';
  return `The rig ${use > FALLS ? `falls ${way} off the shoulder` : `leans ${way}`}: the hands must ${aheadMm > 0 ? 'hold up' : 'pull down'} more than they can all day.`;
}

interface OnShoulder {
  readonly whole: WholeMass;
  /** `build/piece` of the pad. */
  readonly pad: string;
  /** Where it bears on the shoulder. */
  readonly padMm: Vector;
  readonly aheadMm: number;
  readonly handsAheadMm: number;
  /** The hands are on grips that are placed. */
  readonly gripped: boolean;
  readonly hold: ReturnType<typeof shoulderHold>;
}

/** A text where the pad has no place yet; `undefined` where nothing that has one weighs anything. */
function onShoulder(asking: Asking, { setup, glass }: SetupGlass): OnShoulder | string | undefined {
  const build = asking.ledger.at(`setups/${setup}/camera`) as string;
  const { contacts } = standsOn(asking.ledger, setup, glass, build);
  const pad = contacts.find(({ type }) => type.name === 'shoulder');
  const own = [...setupPieces(asking.ledger, setup, glass).values()].filter((piece) => piece.build === build);
  const missing = nothingBears(asking.ledger, build, own);
  if (missing !== undefined) throw new NotEntered([{ path: missing.path, says: missing.says }]);
  const pads = own.filter((piece) => carrierKind(piece) === 'shoulder pad');
  if (pads.every(({ ref }) => ref !== pad?.ref)) return `${listed(pads.map(({ name }) => name))} is not joined to the rig yet: without a place nothing can be balanced on it.`;
  const whole = wholeMass(asking, { setup, glass }, build, () => true);
  if (pad === undefined || whole === undefined) return undefined;
  const { places } = placeSetup(asking.ledger, setup, glass);
  const grips = gripsOf(asking.ledger, { setup, glass, build }, own).flatMap(({ ref }) => places.get(ref)?.t[2] ?? []);
  const gripsAhead = grips.length === 0 ? 0 : grips.reduce((sum, z) => sum + z, 0) / grips.length - pad.atMm[2];
  const gripped = gripsAhead > 50;
  const handsAheadMm = gripped ? gripsAhead : asking.assume(balance.handsAheadMm).value;
  const aheadMm = whole.centreMm[2] - pad.atMm[2];
  return { whole, pad: pad.ref, padMm: pad.atMm, aheadMm, handsAheadMm, gripped, hold: shoulderHold({ massG: whole.massG, aheadOfPadMm: aheadMm, handsAheadMm }) };
}

/** A rig over its pad: where its centre of mass is, how far all of it has gone, and where the hands are, ahead of the pad. */
interface Forward {
  readonly centreMm: number;
  readonly rigMm: number;
  readonly handsAheadMm: number;
}

/** The gust on it as it sits, or with the rig further forward over the pad. */
function gustOn(asking: Asking, subject: SetupGlass, { whole, padMm, aheadMm, handsAheadMm }: OnShoulder, forward: Forward = { centreMm: aheadMm, rigMm: 0, handsAheadMm }): ShoulderGust | undefined {
  const { handForceN } = shoulderHold({ massG: whole.massG, aheadOfPadMm: forward.centreMm, handsAheadMm: forward.handsAheadMm });
  const build = asking.ledger.at(`setups/${subject.setup}/camera`) as string;
  return shoulderGust(asking, subject, build, { padMm: [padMm[0], padMm[1], padMm[2] - forward.rigMm], handsAheadMm: forward.handsAheadMm, handForceN });
}

const gustSteps = (stillN: number, { forceN, areaMm2, air, upDownN, sidewaysN }: ShoulderGust): Step[] => [
  { says: 'hands hold in still air', amount: { value: stillN, unit: 'N' } },
  { says: `a gust on the whole rig, ${windSays(air, areaMm2)}`, amount: { value: forceN, unit: 'N' } },
  { says: 'of that at the hands, up or down', amount: { value: upDownN, unit: 'N' } },
  { says: 'and sideways', amount: { value: sidewaysN, unit: 'N' } },
];

const sheltered = (stillN: number, gust: ShoulderGust | undefined, restN: number): Mend[] =>
  gust === undefined || stillN > restN ? [] : [{ says: 'Keep it out of the wind', use: stillN / restN, costs: 'a windbreak, or another place' }];

/** How long the hands could bear it, and for how long the longest shot asks. */
function endurance(asking: Asking, { setup, glass }: SetupGlass, forceN: number) {
  const strength = asking.assume(mechanics.handStrengthN).value;
  const held = asking.ledger.keys('shots').flatMap((shot) => (asking.ledger.at(`shots/${shot}/setup`) === setup && asking.ledger.at(`shots/${shot}/glass`) === glass ? (shootFigure(asking.ledger, `shots/${shot}/holdMin`)?.value ?? []) : []));
  const holdMin = Math.max(0, ...held);
  const { enduranceMin } = holdingEndurance({ forceShare: Math.min(1, forceN / strength), holdMin });
  const asked = holdMin === 0 ? '' : `; the longest shot holds it for ${printAmount({ value: holdMin, unit: 'min' })}`;
  return [Number.isFinite(enduranceMin) ? { says: `hands tire after${asked}`, amount: { value: enduranceMin, unit: 'min' as const } } : { says: `that is ${printNumber((100 * forceN) / strength, 2)} % of what two hands lift at most: the endurance curve sets no end below 15 %${asked}` }];
}

/** What the hands hold with the rig, or its centre alone, elsewhere: in a gust where there is wind. */
function handsWith(asking: Asking, subject: SetupGlass, found: OnShoulder, forward: Forward): number {
  const { handForceN } = shoulderHold({ massG: found.whole.massG, aheadOfPadMm: forward.centreMm, handsAheadMm: forward.handsAheadMm });
  return gustOn(asking, subject, found, forward)?.handForceN ?? Math.abs(handForceN);
}

/** Where the pack would have to sit. */
function packMends(asking: Asking, subject: SetupGlass, found: OnShoulder, restN: number): Mend[] {
  const { whole, padMm: [, , padZ], handsAheadMm } = found;
  const plate = heaviestPack(whole);
  if (plate === undefined || plate.massG >= whole.massG) return [];
  const others = whole.massG - plate.massG;
  const centreMm = (whole.massG * whole.centreMm[2] - plate.massG * plate.centreMm[2]) / others;
  const { packMm } = packPlace({ massG: others, centreMm, packMassG: plate.massG, wantedMm: padZ });
  const moveMm = packMm - plate.centreMm[2];
  const easedMm = ((restN * 0.85 * handsAheadMm) / weightN(whole.massG)) * (whole.massG / plate.massG);
  const near = moveMm > 0 ? Math.max(0, moveMm - easedMm) : Math.min(0, moveMm + easedMm);
  const back = (mm: number) => `${printAmount({ value: Math.round(Math.abs(mm)), unit: 'mm' })} further ${mm < 0 ? 'back' : 'forward'}`;
  const afterMm = whole.centreMm[2] + (near * plate.massG) / whole.massG - padZ;
  return [{
    says: `Put ${plate.piece.name} ${back(near)}: ${back(moveMm)} would balance it`,
    use: handsWith(asking, subject, found, { centreMm: afterMm, rigMm: 0, handsAheadMm }) / restN,
    costs: Math.abs(near) > 250 ? 'a long way out: slide the pad forward or hang more weight behind as well' : 'a longer lead to the camera',
  }];
}

/** Sliding the pad under the centre of mass, where its joint allows it: the camera goes the other way on it. */
function padMend(asking: Asking, subject: SetupGlass, found: OnShoulder, restN: number): Mend[] {
  const { whole, aheadMm, pad } = found;
  const slide = loadSlides(asking.ledger, subject, pad).find(({ joint: { a, b }, way }) => [a.ref, b.ref].includes(pad) && Math.abs(way[2]) > 0.95);
  if (slide === undefined) return [];
  const back: Vector = [0, 0, -Math.sign(aheadMm)];
  const share = movedShare(whole, slide);
  const wantMm = Math.abs(aheadMm) / Math.max(share, 0.01);
  const value = settingFor(slide, back, Math.min(wantMm, roomAlong(slide, back)));
  const goMm = (value - slide.valueMm) * slide.way[2];
  if (Math.abs(goMm) < 1) return [];
  const hands = found.gripped ? Math.max(50, found.handsAheadMm + goMm) : found.handsAheadMm;
  // The outline goes forward with the rig, by about as much.
  const use = handsWith(asking, subject, found, { centreMm: aheadMm + goMm * share, rigMm: goMm * share, handsAheadMm: hands }) / restN;
  const says = `Slide the pad ${printAmount({ value: Math.abs(goMm), unit: 'mm' })} ${goMm < 0 ? 'forward' : 'back'}${Math.abs(goMm) < wantMm - 1 ? ', as far as it goes' : ''}`;
  return [{ says, edit: { says, patches: settingPatches(slide, value) }, use, costs: 'the camera sits elsewhere before the eye' }];
}
