import { gripsOf, standsOn } from '../../../assembly/hold/standsOn.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import type { JointEnd, RigJoint } from '../../../assembly/placing/rigJoints.ts';
import { IDENTITY, rotate } from '../../../assembly/placing/Transform.ts';
import { setupPieces } from '../../../assembly/setupPieces.ts';
import { holdingEndurance } from '../../../calc/mechanics/holdingEndurance.ts';
import { packPlace } from '../../../calc/mechanics/packPlace.ts';
import { shoulderHold } from '../../../calc/mechanics/shoulderHold.ts';
import { weightN } from '../../../calc/mechanics/gravity.ts';
import type { Patch } from '../../../shoot/edit/Edit.ts';
import { balance } from '../../../standards/assumptions/balance.ts';
import { mechanics } from '../../../standards/assumptions/mechanics.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { cautionsFor } from '../../quantities/estimateNote.ts';
import { shootFigure } from '../../quantities/shootFigures.ts';
import { type WholeMass, leftOut, wholeMass } from '../../quantities/wholeMass.ts';
import { question } from '../../question.ts';
import { type SetupGlass, eachGlass } from '../../subjects.ts';

export const shoulder = question<SetupGlass>({
  id: 'balance.shoulder',
  asks: 'Does it sit balanced on the shoulder?',
  kind: 'immediate',
  explains:
    'The weight of the rig times the distance of its centre of mass ahead of the middle of the pad is what the hands must hold up (ahead) or pull down (behind), over the distance of the grips from the pad. That force is held against what hands give without being noticed; how long the hands could bear it follows from a published endurance curve, a caution and no limit: ' +
    'for holding a camera no published limit exists. Where it does not balance, the place is worked out at which the pack would balance it, along the rig and at its own height.',
  sources: ['statics of rigid bodies', 'Rohmert 1960: endurance of a static hold, a caution', 'no published limit exists for a shoulder rig'],
  subjects: (ledger) => eachGlass(ledger).filter(({ setup }) => ledger.at(`builds/${ledger.at(`setups/${setup}/camera`) as string}/purpose`) === 'shoulder'),
  ask: (asking, subject) => {
    const found = onShoulder(asking, subject);
    if (found === undefined) return null;
    const { whole, aheadMm, handsAheadMm, hold } = found;
    const rest = asking.assume(balance.restForceN);
    const force = Math.abs(hold.handForceN);
    const way = aheadMm > 0 ? 'forward' : 'backward';
    return judgeRatio({
      needs: { amount: { value: force, unit: 'N' }, from: `${printAmount({ value: whole.massG, unit: 'g' })}, its centre ${printAmount({ value: Math.abs(aheadMm), unit: 'mm' })} ${aheadMm > 0 ? 'ahead of' : 'behind'} the pad, over ${printAmount({ value: handsAheadMm, unit: 'mm' })} to the hands`, word: 'hands hold' },
      has: { amount: { value: rest.value, unit: 'N' }, from: 'what both hands give without being noticed (assumed ± 8.5)', word: 'with ease' },
      says: { holds: 'The rig sits on the shoulder by itself.', tight: `The rig leans ${way} a little: the hands notice.`, fails: `The rig falls ${way} off the shoulder: the hands must ${aheadMm > 0 ? 'hold it up' : 'pull it down'}.` },
      steps: [
        { says: 'moment about the pad', amount: { value: Math.abs(hold.momentNm), unit: 'N·m' } },
        { says: 'on the shoulder itself', amount: { value: hold.padForceN, unit: 'N' } },
        ...endurance(asking, subject, force),
      ],
      mends: force > 0.9 * rest.value ? packMends(asking, subject, found, rest.value) : [],
      notes: ['For holding a camera on a shoulder no published limit exists; pain is a reason to stop.', ...cautionsFor('shoulder'), ...leftOut(whole)],
    });
  },
});

interface OnShoulder {
  readonly whole: WholeMass;
  readonly padZ: number;
  readonly aheadMm: number;
  readonly handsAheadMm: number;
  readonly hold: ReturnType<typeof shoulderHold>;
}

function onShoulder(asking: Asking, { setup, glass }: SetupGlass): OnShoulder | undefined {
  const build = asking.ledger.at(`setups/${setup}/camera`) as string;
  const { contacts } = standsOn(asking.ledger, setup, glass, build);
  const pad = contacts.find(({ type }) => type.name === 'shoulder');
  const own = [...setupPieces(asking.ledger, setup, glass).values()].filter((piece) => piece.build === build);
  const padded = own.some((piece) => piece.part.read('carrier/kind') === 'shoulder pad' && piece.ref === pad?.ref);
  const whole = wholeMass(asking, { setup, glass }, build, () => true);
  if (pad === undefined || !padded || whole === undefined) return undefined;
  const { places } = placeSetup(asking.ledger, setup, glass);
  const grips = gripsOf(asking.ledger, { setup, glass, build }, own).flatMap(({ ref }) => places.get(ref)?.t[2] ?? []);
  const gripsAhead = grips.length === 0 ? 0 : grips.reduce((sum, z) => sum + z, 0) / grips.length - pad.atMm[2];
  const handsAheadMm = gripsAhead > 50 ? gripsAhead : asking.assume(balance.handsAheadMm).value;
  const aheadMm = whole.centreMm[2] - pad.atMm[2];
  return { whole, padZ: pad.atMm[2], aheadMm, handsAheadMm, hold: shoulderHold({ massG: whole.massG, aheadOfPadMm: aheadMm, handsAheadMm }) };
}

/** How long the hands could bear it, and for how long the longest shot asks. */
function endurance(asking: Asking, { setup, glass }: SetupGlass, forceN: number) {
  const strength = asking.assume(mechanics.handStrengthN).value;
  const held = asking.ledger.keys('shots').flatMap((shot) => (asking.ledger.at(`shots/${shot}/setup`) === setup && asking.ledger.at(`shots/${shot}/glass`) === glass ? (shootFigure(asking.ledger, `shots/${shot}/holdMin`)?.value ?? []) : []));
  const holdMin = Math.max(0, ...held);
  const { enduranceMin } = holdingEndurance({ forceShare: Math.min(1, forceN / strength), holdMin });
  const asked = holdMin === 0 ? '' : `; the longest shot holds it for ${printAmount({ value: holdMin, unit: 'min' })}`;
  return [Number.isFinite(enduranceMin) ? { says: `hands tire after${asked}`, amount: { value: enduranceMin, unit: 'min' as const } } : { says: `that is ${printNumber((100 * forceN) / strength, 2)} % of what two hands lift at most: the endurance curve sets no end below 15 %${asked}` }];
}

/** Where the pack would have to sit; and what a heavier one on the same plate would do. */
function packMends(asking: Asking, subject: SetupGlass, { whole, padZ, handsAheadMm }: OnShoulder, restN: number): Mend[] {
  const plate = whole.pieces.filter(({ piece }) => piece.part.has('pack') || piece.part.has('batteryPlate')).toSorted((a, b) => b.massG - a.massG)[0];
  if (plate === undefined) return [];
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
    use: Math.abs(shoulderHold({ massG: whole.massG, aheadOfPadMm: afterMm, handsAheadMm }).handForceN) / restN,
    costs: Math.abs(near) > 250 ? 'a long way out: slide the pad forward or hang more weight behind as well' : 'a longer lead to the camera',
  }, ...padMend(asking, subject, { whole, padZ, handsAheadMm }, restN)];
}

/** Sliding the pad under the centre of mass, where its joint allows it. */
function padMend(asking: Asking, { setup, glass }: SetupGlass, { whole, padZ, handsAheadMm }: Pick<OnShoulder, 'whole' | 'padZ' | 'handsAheadMm'>, restN: number): Mend[] {
  const { model, places } = placeSetup(asking.ledger, setup, glass);
  const isPad = ({ piece }: JointEnd) => piece.part.read('carrier/kind') === 'shoulder pad';
  const step = model.tree.find(({ joint: { a, b } }) => (isPad(a) || isPad(b)) && (a.point.slideMm ?? b.point.slideMm) !== undefined);
  if (step === undefined || step.variables.some(({ key }) => key === 'slideMm' && step.fixed[key] !== undefined)) return [];
  const counted = step.turned.has('slideMm') ? step.joint.b : step.joint.a;
  const [low, high] = step.joint.a.point.slideMm ?? step.joint.b.point.slideMm ?? [0, 0];
  const value = (step.fixed.slideMm ?? 0) * (step.turned.has('slideMm') ? -1 : 1);
  // The setting says where the other piece sits along this one's `up`: that the pad goes forward raises it on the camera, and lowers it on the pad.
  const up = rotate((places.get(counted.ref) ?? IDENTITY).r, counted.point.up ?? [0, 0, 1])[2];
  const sense = Math.sign(up) * (isPad(counted) ? -1 : 1);
  const wantMm = whole.centreMm[2] - padZ;
  const room = sense * wantMm > 0 ? high - value : value - low;
  const goMm = Math.sign(wantMm) * Math.min(Math.abs(wantMm), room);
  if (Math.abs(goMm) < 1) return [];
  const padShare = whole.pieces.filter(({ piece }) => piece.part.read('carrier/kind') === 'shoulder pad').reduce((sum, { massG }) => sum + massG, 0) / whole.massG;
  const use = Math.abs(shoulderHold({ massG: whole.massG, aheadOfPadMm: wantMm - goMm * (1 - padShare), handsAheadMm: Math.max(50, handsAheadMm - goMm) }).handForceN) / restN;
  const says = `Slide the pad ${printAmount({ value: Math.abs(goMm), unit: 'mm' })} ${goMm > 0 ? 'forward' : 'back'}${Math.abs(goMm) < Math.abs(wantMm) ? ', as far as it goes' : ''}`;
  return [{ says, edit: { says, patches: settingPatch(step.joint, value + sense * goMm) }, use, costs: 'the camera sits elsewhere before the eye' }];
}

function settingPatch({ path, settings }: RigJoint, value: number): Patch[] {
  const rounded = Math.round(value);
  return Object.keys(settings).length > 0 ? [{ op: 'add', path: `${path}/settings/slideMm`, value: rounded }] : [{ op: 'add', path: `${path}/settings`, value: { slideMm: rounded } }];
}
