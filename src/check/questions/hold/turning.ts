import { carriedWords } from '../../../assembly/hold/carriedOn.ts';
import { jointHold, typeOf } from '../../../assembly/hold/jointHold.ts';
import { freeSide } from '../../../assembly/hold/freeSide.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import type { RigJoint } from '../../../assembly/placing/rigJoints.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { frictionBand } from '../../../standards/frictionBands.ts';
import { mechanics } from '../../../standards/assumptions/mechanics.ts';
import { printAmount, printNumber } from '../../../units/print.ts';
import type { Mend } from '../../answer.ts';
import type { Asking } from '../../Asking.ts';
import { judgeRatio } from '../../judge.ts';
import { buildsInUse, usesOf } from '../../quantities/buildsInUse.ts';
import { cautionsFor } from '../../quantities/estimateNote.ts';
import { type JointSlip, jointSlip } from '../../quantities/jointSlip.ts';
import { type Turning, turningMoment } from '../../quantities/turningMoment.ts';
import { limitMend } from '../../quantities/limitMend.ts';
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
    'is held against the largest of these: the weight that hangs beyond it times its arm in the worst attitude, with a factor for jolts; a hand on the edge of a screen or a wheel; a motor that drives into a stop; outdoors, a gust. Joints with locating pins, a second screw or a ' +
    'second clamp are held by shape, and are not asked about. Friction and tightening scatter widely: between half and twice the figure is usual.',
  sources: ['torque and preload: Bickford, Shigley', 'disc clutch of even pressure: Shigley', 'clamped hubs: Roloff & Matek (from memory)', 'a single screw turns; locating pins stop it: common practice'],
  subjects: turnable,
  ask: (asking, { build, joint: path }) => {
    const found = worstUse(asking, build, path);
    if (found === undefined) return null;
    const { slip, turning: { worst, cases, free, notes }, names } = found;
    const what = free.find(({ ref }) => ref === worst.piece?.ref)?.name ?? names.turns;
    const cause = { weight: 'its own weight', touch: 'a touch on its edge', motor: 'the motor’s push', wind: 'the wind' }[worst.by];
    return judgeRatio({
      needs: { amount: { value: worst.momentNm, unit: 'N·m' }, from: worst.says },
      has: { amount: { value: slip.value, unit: 'N·m' }, from: slip.says },
      says: {
        holds: `Between ${names.a} and ${names.b}, friction holds against ${cause}.`,
        tight: `Between ${names.a} and ${names.b}, friction only just holds against ${cause}.`,
        fails: `${what} turns ${what === names.turns ? `on ${names.stays}` : `where ${names.b} meets ${names.a}`}: ${cause} beats the friction.`,
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

/** Of all glasses with which the build is used, the one that asks most of the joint. */
function worstUse(asking: Asking, build: string, path: string): Found | undefined {
  const all = usesOf(asking.ledger, build).flatMap((subject): Found[] => {
    const placement = placeSetup(asking.ledger, subject.setup, subject.glass);
    const model = [...placement.model.tree, ...placement.model.loops].find(({ joint }) => joint.path === path);
    if (model === undefined || model.joint.a.piece.build !== build) return [];
    const hold = jointHold(model, placement);
    const slip = jointSlip(asking, hold);
    const turned = slip === undefined ? undefined : turningMoment(asking, subject, hold, slip.value);
    return slip === undefined || turned === undefined ? [] : [{ slip, subject, turning: turned, type: hold.type.name, joint: model.joint, names: namesOf(model.joint, turned) }];
  });
  return all.reduce<Found | undefined>((worst, one) => (worst === undefined || one.turning.worst.momentNm / one.slip.value > worst.turning.worst.momentNm / worst.slip.value ? one : worst), undefined);
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

/** What would hold a joint of each type by its shape. */
const BY_SHAPE: Readonly<Record<string, string>> = {
  'one screw': 'A plate with locating pins, or a second screw', 'clamp on one rod': 'A clamp on both rods', collar: 'A screw or a key in its seat', 'friction arm': 'A toothed joint, or a second arm',
  shoe: 'A screw with pins in place of the shoe',
};

function mends(asking: Asking, path: string, { slip, subject, turning: { worst }, type, joint }: Found): Mend[] {
  const byShape: Mend = { says: `${BY_SHAPE[type] ?? 'Pins, a second screw or a second clamp'}: shape then holds it`, use: 0 };
  const all = [...moreFriction(asking, path, worst.momentNm, { slip, joint }), ...(worst.by === 'motor' && worst.piece !== undefined ? limitMend(asking, subject, worst.piece, (share) => (worst.momentNm * share) / slip.value) : []), byShape];
  return all.toSorted((one, other) => Number((one.use ?? 2) > 1) - Number((other.use ?? 2) > 1));
}

function moreFriction(asking: Asking, path: string, momentNm: number, { slip, joint: { a, b } }: Pick<Found, 'slip' | 'joint'>): Mend[] {
  if (slip.screw === undefined) return [];
  const { torqueNm, slipAt, byKnob, mostNm, diameterMm } = slip.screw;
  const all: Mend[] = [];
  const wanted = Math.ceil(((torqueNm * momentNm) / (0.85 * slip.value)) * 10) / 10;
  if (wanted <= mostNm && wanted > torqueNm) {
    const says = `Tighten the screw to ${printAmount({ value: wanted, unit: 'N·m' })}`;
    all.push({ says, edit: { says, patches: [{ op: 'add', path: `${path}/torqueNm`, value: wanted }] }, use: momentNm / slipAt(wanted), costs: byKnob ? 'as much as fingers give' : a.piece.part.has('body') || b.piece.part.has('body') ? 'the thread in a camera body strips: no more than its maker states' : 'a torque key tells; an aluminium thread wants no more' });
  }
  const [now, cork] = [asking.assume(mechanics.faceFriction).value, frictionBand('rubber or cork on metal')];
  if (cork !== undefined && diameterMm > 6 && now > 0 && slip.value > 0) all.push({ says: 'A cork or rubber washer between the faces', use: (momentNm / slip.value) * (now / cork.value), costs: 'it lets the joint nod a little more' });
  return all;
}
