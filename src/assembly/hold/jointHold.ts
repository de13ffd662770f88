import { STIFFNESS_KEYS } from '../../calc/mechanics/network/model.ts';
import { hold } from '../../standards/assumptions/hold.ts';
import { type JointType, type Way, jointType } from '../../standards/jointTypes.ts';
import { assume } from '../../shoot/ledger/figures.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import { type Placement, placeSetup } from '../placing/placeSetup.ts';
import { jointTransform } from '../placing/jointFrame.ts';
import type { ModelJoint } from '../placing/rigModel.ts';
import { settingsWith } from '../placing/chain.ts';
import { SCREWED, onlyPushes } from '../mates.ts';
import type { JointEnd, RigJoint } from '../placing/rigJoints.ts';
import { IDENTITY, type Transform, type Vector, axis, compose } from '../placing/Transform.ts';

/** How a joint holds: its type, where it is, and how stiff in its own axes. */
export interface JointHold {
  readonly joint: RigJoint;
  readonly type: JointType;
  /** Its frame in the build: z out of the joint. */
  readonly at: Transform;
  /** The line about which friction alone may hold it. */
  readonly axis: Vector;
  readonly stiffness: Readonly<Record<Way, number>>;
}


/** Kept, as a rig is asked for again with each mass that changes, and its joints hold as before. */
export function jointHold(model: ModelJoint, { setup, glass }: Placement): JointHold {
  const { ledger } = model.joint.a.piece.part;
  return ledger.cell(`joint hold|${setup}|${glass}|${model.joint.path}`, () => heldBy(model, placeSetup(ledger, setup, glass)));
}

function heldBy(model: ModelJoint, placement: Placement): JointHold {
  const { joint } = model;
  const type = typeOf(joint);
  const at = compose(compose(placement.places.get(joint.a.ref) ?? IDENTITY, model.frameA), jointTransform(joint.a.point.kind, settingsWith(model, placement.values)));
  // A collar is entered with its way out across the barrel: the barrel runs along `up`.
  return { joint, type, at, axis: axis(at.r, joint.a.point.kind === 'collar' ? 1 : 2), stiffness: stiffnessOf(joint, type) };
}

/** What holds the two, read from the kinds of their points, their pins and screws. */
export function typeOf({ a, b }: RigJoint): JointType {
  return jointType(nameOf(a, b)) as JointType;
}

/** Kinds of point that alone say how a joint holds; the first that either end is of counts. */
const NAMED: readonly (readonly [kind: string, name: string])[] = [
  ['rod', 'clamp on one rod'], ['rod clamp', 'clamp on one rod'], ['spud', 'clamp on one rod'], ['wedge', 'wedge'], ['quick release', 'quick release'], ['shoe', 'shoe'], ['battery plate', 'battery plate'], ['arm', 'friction arm'],
];

function nameOf(a: JointEnd, b: JointEnd): string {
  const has = (kind: string) => a.point.kind === kind || b.point.kind === kind;
  if (has('surface') || has('hand')) return 'lens support';
  if (has('lens mount')) return 'lens mount';
  if (has('collar')) return 'collar';
  if ([a, b].every(({ point }) => point.class?.toLowerCase().includes('rosette') === true)) return 'rosette';
  if (has('front')) return frontName(a, b);
  if (a.point.kind === 'tripod plate' && b.point.kind === 'tripod plate') return 'wedge';
  return NAMED.find(([kind]) => has(kind))?.[1] ?? screwName(a, b);
}

function screwName(a: JointEnd, b: JointEnd): string {
  if (!SCREWED.has(a.point.kind)) return 'screw with pins';
  if (screwsOf({ a, b }) > 1) return 'two screws';
  return a.point.pins === true && b.point.pins === true ? 'screw with pins' : 'one screw';
}

/** How many screws hold two points together: as many as both have room for, and where only one end says so, as many as that says. */
export function screwsOf({ a, b }: Pick<RigJoint, 'a' | 'b'>): number {
  const said = [a, b].flatMap(({ point: { screws } }) => screws ?? []);
  return said.length === 0 ? 1 : Math.min(...said);
}

/** A block that can be turned to set its axis sits in a clamp; a thread or a keyed seat is as good as one piece. */
function frontName(a: JointEnd, b: JointEnd): string {
  const seat = [a, b].find(({ piece, point }) => piece.part.has('block') && point.out !== undefined && point.out[2] < 0);
  const heldBy = seat?.piece.part.read('block/roll/heldBy');
  return heldBy === 'friction' || heldBy === 'clamp' ? 'collar' : 'press fit or screws all round';
}

/**
 * Entered stiffness of either point comes first; two give way one after the other, and so does the elbow of an arm. `as`: were the joint of that type
 * instead; what is entered then grows as the usual figures do.
 */
export function stiffnessOf(joint: RigJoint, type: JointType, as: JointType = type): Readonly<Record<Way, number>> {
  const { a, b } = joint;
  const share = assume(a.piece.part.ledger, hold.stiffness).value;
  const usual = scaled(framed(joint, as), share);
  const arm = armOf(joint) === undefined ? undefined : jointType('friction arm')?.stiffness;
  const elbow = arm && scaled(arm, share);
  const entered = [a, b].map(({ piece, pointId }) => enteredStiffness(piece.part, pointId)).filter((one) => one !== undefined);
  if (entered.length === 0 && elbow === undefined) return usual;
  return Object.fromEntries(STIFFNESS_KEYS.map((way) => {
    const own = entered.flatMap((one) => one[way] ?? []);
    if (own.length > 0) return [way, inSeries(own) * Math.max(1, as.stiffness[way] / type.stiffness[way] || 1)];
    return [way, elbow === undefined ? usual[way] : inSeries([usual[way], elbow[way]])];
  })) as Record<Way, number>;
}

const scaled = (stiffness: Readonly<Record<Way, number>>, share: number): Readonly<Record<Way, number>> =>
  share === 1 ? stiffness : (Object.fromEntries(STIFFNESS_KEYS.map((way) => [way, share * stiffness[way]])) as Record<Way, number>);

/** The arm at whose foot or head a joint is: its elbow gives there as well. */
export const armOf = ({ a, b }: Pick<RigJoint, 'a' | 'b'>): JointEnd | undefined =>
  [a, b].find(({ piece, point }) => piece.part.kind === 'arm' && point.kind !== 'arm' && (point.sex === 'male' || SCREWED.has(point.kind)));

/** A type's usual stiffness in the frame of a joint. */
function framed({ a, b }: RigJoint, { name, stiffness }: JointType): Readonly<Record<Way, number>> {
  if (onlyPushes(a.point, b.point)) return upright(stiffness);
  return name === 'collar' && !SEATS.has(a.point.kind) ? alongUp(stiffness) : stiffness;
}

/** What is entered for a point: nearly always nothing, so that it is looked for once for all setups. */
function enteredStiffness(part: PartView, pointId: string): Readonly<Partial<Record<Way, number>>> | undefined {
  return part.ledger.cell(`point stiffness|${part.id}|${pointId}`, () => {
    const entered = STIFFNESS_KEYS.flatMap((way) => {
      const value = part.figure(`points/${pointId}/stiffness/${way}`)?.value;
      return value === undefined ? [] : [[way, value] as const];
    });
    return entered.length === 0 ? undefined : Object.fromEntries(entered);
  });
}

const SEATS = new Set(['front']);
const inSeries = (all: readonly number[]): number => (all.some((one) => one === 0) ? 0 : 1 / all.reduce((sum, one) => sum + 1 / one, 0));

/** The table states a support with its push along y; in the frame of a joint that is the way out, z. */
const upright = (own: Readonly<Record<Way, number>>): Record<Way, number> => ({ ...own, yNPerMm: own.zNPerMm, zNPerMm: own.yNPerMm, yNmPerRad: own.zNmPerRad, zNmPerRad: own.yNmPerRad });
/** A collar whose barrel runs along `up`. */
const alongUp = upright;
