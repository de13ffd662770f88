import { jointHold } from '../../assembly/hold/jointHold.ts';
import type { Variation } from '../../assembly/hold/rigNetwork.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import type { ModelJoint } from '../../assembly/placing/rigModel.ts';
import { STIFFNESS_KEYS, type Stiffness } from '../../calc/mechanics/network/model.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type JointType, jointType } from '../../standards/jointTypes.ts';
import type { SetupGlass } from '../subjects.ts';
import type { ToothPush } from './toothForce.ts';

/** What carries the driver of a ring: as it is built, a rod that is fixed to the block (or lens) under the ring and rides with it, or a collar round the barrel of the ring. */
export type CarriedBy = 'as built' | 'riding rod' | 'collar';

/** The same rig with its driver where it is, but off the main rods and held by the glass; `undefined` as it is built. */
export function drivenFromGlass(ledger: Ledger, { setup, glass }: SetupGlass, push: ToothPush, carriedBy: CarriedBy): Variation | undefined {
  if (carriedBy === 'as built') return undefined;
  const placement = placeSetup(ledger, setup, glass);
  const carrier = carrierOf(ledger, { setup, glass }, push, carriedBy);
  const seats = seatsOf([...placement.model.tree, ...placement.model.loops], push.driver.ref);
  const springs = seats.map((seat) => ({ a: carrier, b: heldEnd(seat, push.driver.ref), atMm: jointHold(seat, placement).at.t, stiffness: bySeatAndClamp() }));
  return { key: `driven from the ${carriedBy}`, apart: new Set(seats.map(({ joint }) => joint.path)), springs };
}

const onRod = ({ joint: { a, b } }: ModelJoint): boolean => a.point.kind === 'rod' || b.point.kind === 'rod';
const touches = ({ joint: { a, b } }: ModelJoint, ref: string): boolean => a.ref === ref || b.ref === ref;

/** Where the driver, or the clamp that it is screwed to, sits on rods; else all that holds it. */
function seatsOf(joints: readonly ModelJoint[], driver: string): readonly ModelJoint[] {
  const own = joints.filter((one) => touches(one, driver));
  if (own.some(onRod)) return own.filter(onRod);
  const beside = joints.filter((one) => onRod(one) && own.some(({ joint: { a, b } }) => touches(one, a.ref === driver ? b.ref : a.ref)));
  return beside.length > 0 ? beside : own;
}

/** The end of such a seat that goes with the driver. */
const heldEnd = ({ joint: { a, b } }: ModelJoint, driver: string): string => (b.ref === driver || a.point.kind === 'rod' ? b.ref : a.ref);

/** The piece that holds it then. */
function carrierOf(ledger: Ledger, { setup, glass }: SetupGlass, { ring }: ToothPush, carriedBy: CarriedBy): string {
  const { stack } = opticalPath(ledger, setup, glass);
  const under = stack[stack.findIndex(({ ref }) => ref === ring.ref) - 1];
  return carriedBy === 'riding rod' && ring.piece.part.has('focuser') && under !== undefined ? under.ref : ring.ref;
}

/** A short rod in its seat on the glass and a clamp on that rod, one after the other. */
function bySeatAndClamp(): Stiffness {
  const { stiffness } = jointType('clamp on one rod') as JointType;
  return Object.fromEntries(STIFFNESS_KEYS.map((way) => [way, stiffness[way] / 2])) as unknown as Stiffness;
}
