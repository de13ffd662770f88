import { carriedWords } from '../../../assembly/hold/carriedOn.ts';
import { jointHold, typeOf } from '../../../assembly/hold/jointHold.ts';
import { freeSide } from '../../../assembly/hold/freeSide.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import type { RigJoint } from '../../../assembly/placing/rigJoints.ts';
import type { SetupPiece } from '../../../assembly/setupPieces.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { frictionBand } from '../../../standards/frictionBands.ts';
import { mechanics } from '../../../standards/assumptions/mechanics.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { nameAt } from '../../nameAt.ts';
import { buildsInUse, usesOf } from '../../quantities/buildsInUse.ts';
import { cautionsFor } from '../../quantities/estimateNote.ts';
import { type JointSlip, jointSlip } from '../../quantities/jointSlip.ts';
import { type Turning, turningMoment } from '../../quantities/turningMoment.ts';
import { limitMend } from '../../quantities/limitMend.ts';
import { listed } from '../../quantities/listed.ts';
import { unplacedNote } from '../../quantities/unplacedNote.ts';
import { question } from '../../question.ts';
import type { SetupGlass } from '../../subjects.ts';

interface JointSubject {
  readonly build: string;
  readonly joint: string;
  /** The joint in words. */
  readonly at: string;
}

export const turning = question<JointSubject>({
  id: 'hold.turning',
  asks: 'Does it turn on its screw or clamp?',
  kind: 'immediate',
  explains:
    'A single screw is one contact point: only the friction under it keeps what it carries from turning. The moment at which the faces slip (screw torque over nut factor and diameter, times friction, times the mean radius of the ring where they touch) ' +
    'is held against the largest of these: the weight that hangs beyond it times its arm in the worst attitude that the build comes into (on a head it tilts but does not roll, a station stands upright, any other is carried every way), with a factor for jolts; a hand on the edge of a screen or a wheel; a motor that drives into a stop; outdoors, a gust. Joints with locating pins, a second screw or a ' +
    'second clamp are held by shape, and are not asked about. Friction and tightening scatter widely: between half and twice the figure is usual.',
  sources: ['torque and preload: Bickford, Shigley', 'disc clutch of even pressure: Shigley', 'clamped hubs: Roloff & Matek (from memory)', 'a single screw turns; locating pins stop it: common practice'],
  subjects: turnable,
  ask: (asking, { build, joint: path }) => {
    const found = worstUse(asking, build, path);
    if (found === undefined) return null;
    const { slip, turning: { worst, cases, free, notes }, names, where } = found;
    const what = free.find(({ ref }) => ref === worst.piece?.ref)?.name ?? names.turns;
    const cause = CAUSES[worst.by];
    const held = worst.held === undefined ? '' : `, ${worst.held}`;
    const turns = `${what} turns ${what === names.turns ? `on ${names.stays}` : `where ${names.b} meets ${names.a}`}`;
    return judgeRatio({
      needs: { amount: { value: worst.momentNm, unit: 'N·m' }, from: worst.says },
      has: { amount: { value: slip.value, unit: 'N·m' }, from: slip.says },
      says: {
        holds: `Between ${names.a} and ${names.b}, friction holds against ${cause}.`,
        tight: `Between ${names.a} and ${names.b}, friction only just holds against ${cause}${held}${where}.`,
        fails: `${turns}: ${cause}${held}${held === '' ? '' : ','} beats the friction${where}.`,
      },
      steps: [
        ...cases.filter((one) => one !== worst).map(({ says, momentNm }) => ({ says, amount: { value: momentNm, unit: 'N·m' as const } })),
        { says: `friction lets go between ${printNumber(slip.low)} and ${printNumber(slip.high)} N·m, by nut factor, friction and tightening` },
      ],
      mends: worst.momentNm > 0.9 * slip.value ? mends(asking, path, found) : [],
      notes: [...cautionsFor(asking.ledger.at(`builds/${build}/purpose`)), ...notes, ...onePinned(found.joint), ...unplacedNote(asking.ledger, found.subject, build)],
    });
  },
});

const CAUSES: Readonly<Record<Turning['worst']['by'], string>> = { weight: 'its own weight', touch: 'a touch on its edge', motor: 'the motor’s push', wind: 'the wind' };

/** Every joint of a build in use that friction alone keeps from turning. */
function turnable(ledger: Ledger): JointSubject[] {
  return buildsInUse(ledger).flatMap((build) => {
    const subjects = new Map<string, JointSubject>();
    for (const { setup, glass } of usesOf(ledger, build)) {
      const { model } = placeSetup(ledger, setup, glass);
      for (const { joint } of [...model.tree, ...model.loops]) {
        if (subjects.has(joint.path) || joint.a.piece.build !== build || joint.b.piece.build !== build) continue;
        const type = typeOf(joint);
        if (type.heldBy.zNmPerRad !== 'friction' || type.name === 'lens support') continue;
        if (freeSide(ledger, setup, glass, joint.path) === undefined) continue;
        subjects.set(joint.path, { build, joint: joint.path, at: carriedWords(ledger, setup, glass, joint) });
      }
    }
    return [...subjects.values()];
  });
}

interface Found {
  readonly slip: JointSlip;
  readonly subject: SetupGlass;
  readonly turning: Turning;
  readonly type: string;
  readonly joint: RigJoint;
  /** Of the two ends, and which of them turns. */
  readonly names: { readonly a: string; readonly b: string; readonly turns: string; readonly stays: string };
}

type Worst = Found & {
  /** ", in Boathouse, sticks", where the build stands in other setups too, in which less is asked of the joint; else nothing. */
  readonly where: string;
};

/** Of all glasses with which the build is used, the one that asks most of the joint. */
function worstUse(asking: Asking, build: string, path: string): Worst | undefined {
  const all = usesOf(asking.ledger, build).flatMap((subject): Found[] => {
    const placement = placeSetup(asking.ledger, subject.setup, subject.glass);
    const model = [...placement.model.tree, ...placement.model.loops].find(({ joint }) => joint.path === path);
    if (model === undefined || model.joint.a.piece.build !== build) return [];
    const hold = jointHold(model, placement);
    const slip = jointSlip(asking, hold);
    const turned = slip === undefined ? undefined : turningMoment(asking, subject, hold, slip.value);
    return slip === undefined || turned === undefined ? [] : [{ slip, subject, turning: turned, type: hold.type.name, joint: model.joint, names: namesOf(model.joint, turned) }];
  });
  const useOf = ({ turning: { worst }, slip }: Found): number => worst.momentNm / slip.value;
  const found = all.reduce<Found | undefined>((worst, one) => (worst === undefined || useOf(one) > useOf(worst) ? one : worst), undefined);
  if (found === undefined) return undefined;
  const like = new Set(all.filter((one) => useOf(one) >= 0.99 * useOf(found)).map(({ subject }) => subject.setup));
  const others = usesOf(asking.ledger, build).some(({ setup }) => !like.has(setup));
  return { ...found, where: others ? `, in ${listed([...like].map((setup) => nameAt(asking.ledger, 'setups', setup)))}` : '' };
}

function namesOf({ a, b }: RigJoint, { free }: Turning): Found['names'] {
  const [turns, stays] = free.some(({ ref }) => ref === a.ref) ? [a, b] : [b, a];
  return { a: a.piece.name, b: b.piece.name, turns: turns.piece.name, stays: stays.piece.name };
}

/** Pins without holes for them hold nothing. */
function onePinned({ a, b }: RigJoint): string[] {
  if ((a.point.pins === true) === (b.point.pins === true)) return [];
  const [pinned, bare] = a.point.pins === true ? [a, b] : [b, a];
  return [`${pinned.piece.name} has locating pins, ${bare.piece.name} no holes for them that are entered.`];
}

/** What a pin or rosette of camera gear is trusted with. Common practice, from memory. */
const SHAPE_TRUSTED_NM = 30;

/** What would hold a joint of each type by its shape. */
const BY_SHAPE: Readonly<Record<string, string>> = {
  'one screw': 'A plate with locating pins, or a second screw', 'clamp on one rod': 'A clamp on both rods', collar: 'A screw or a key in its seat', 'friction arm': 'A toothed joint, or a second arm',
  shoe: 'A screw with pins in place of the shoe',
};

function mends(asking: Asking, path: string, { slip, subject, turning: { worst, free }, type, joint }: Found): Mend[] {
  const shape = BY_SHAPE[type] ?? 'Pins, a second screw or a second clamp';
  const byShape: Mend = worst.momentNm > SHAPE_TRUSTED_NM
    ? { says: `${shape}: shape then holds it, as far as that itself bears so much, which is not reckoned`, costs: `pins and rosettes of camera gear are not trusted with more than ${printAmount({ value: SHAPE_TRUSTED_NM, unit: 'N·m' })}: have it made for the load` }
    : { says: `${shape}: shape then holds it`, use: 0 };
  const all = [...moreFriction(asking, path, worst.momentNm, { slip, joint, softly: free.every((piece) => !isRigid(piece)) }), ...(worst.by === 'motor' && worst.piece !== undefined ? limitMend(asking, subject, worst.piece, (share) => (worst.momentNm * share) / slip.value) : []), byShape];
  return all.toSorted((one, other) => Number((one.use ?? 2) > 1) - Number((other.use ?? 2) > 1));
}

/** The picture, or what drives its focus, nods with what carries it: nothing soft goes under these. */
const isRigid = ({ part, fromGlass }: SetupPiece): boolean => fromGlass || part.has('body') || part.has('motor') || part.has('handWheel');

function moreFriction(asking: Asking, path: string, momentNm: number, { slip, joint: { a, b }, softly }: Pick<Found, 'slip' | 'joint'> & { readonly softly: boolean }): Mend[] {
  if (slip.screw === undefined) return [];
  const { torqueNm, slipAt, byKnob, mostNm, diameterMm } = slip.screw;
  const all: Mend[] = [];
  const wanted = Math.ceil(((torqueNm * momentNm) / (0.85 * slip.value)) * 10) / 10;
  if (wanted <= mostNm && wanted > torqueNm) {
    const says = `Tighten the screw to ${printAmount({ value: wanted, unit: 'N·m' })}`;
    all.push({ says, edit: { says, patches: [{ op: 'add', path: `${path}/torqueNm`, value: wanted }] }, use: momentNm / slipAt(wanted), costs: byKnob ? 'as much as fingers give' : a.piece.part.has('body') || b.piece.part.has('body') ? 'the thread in a camera body strips: no more than its maker states' : 'a torque key tells; an aluminium thread wants no more' });
  }
  const [now, cork] = [asking.assume(mechanics.faceFriction).value, frictionBand('rubber or cork on metal')];
  if (softly && cork !== undefined && diameterMm > 6 && now > 0 && slip.value > 0) all.push({ says: 'A cork or rubber washer between the faces', use: (momentNm / slip.value) * (now / cork.value), costs: 'it lets the joint nod a little more' });
  return all;
}
