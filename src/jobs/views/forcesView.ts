import { ATTITUDES, type Attitude } from '../../assembly/hold/rigLoads.ts';
import { type RigNetwork, rigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { heldFast } from '../../assembly/hold/underWeight.ts';
import { type Vector, add, scale } from '../../assembly/placing/Transform.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import { Asking } from '../../check/Asking.ts';
import { origin } from '../../check/origin.ts';
import { ringTorque } from '../../check/quantities/ringTorque.ts';
import { temperatureAt } from '../../check/quantities/temperatureAt.ts';
import { SPREADING, type ToothPush, toothPushes } from '../../check/quantities/toothForce.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { printAmount } from '../../units/print.ts';
import { type RigForces, pushForces, weightForces } from './rigForces.ts';
import { type RigGust, rigGusts } from './rigGusts.ts';
import { type RigHand, rigHands } from './rigHands.ts';
import { type View, viewOf } from './View.ts';

/** Something that pulls at the rig, to be chosen. */
export interface LoadChoice {
  readonly id: string;
  readonly says: string;
}

export interface ForcesView {
  /** The build whose forces these are. */
  readonly build: string;
  readonly loads: readonly LoadChoice[];
  readonly load: string;
  readonly forces: View<RigForces>;
  /** What holds the rig, and what is left out, in words. */
  readonly notes: readonly string[];
  /** Pieces that nothing holds: forces have no meaning then. */
  readonly loose: readonly string[];
}

/** What each joint of the camera carries under one load: its own weight in an attitude, that and a gust or a hand, or the teeth of a gear. */
export function forcesView(ledger: Ledger, subject: SetupGlass, load: string): ForcesView {
  const asking = new Asking(ledger);
  const { setup, glass } = subject;
  const build = ledger.at(`setups/${setup}/camera`) as string;
  const rig = rigNetwork(ledger, setup, glass);
  if (rig === undefined) return { build, loads: [], load, forces: { ok: false, says: 'Fewer than two pieces of the camera have a place: there is no joint between placed pieces to carry anything.' }, notes: [], loose: [] };
  const pushes = pushesOf(rig, toothPushes(ledger, setup, glass));
  const gusts = gustsOn(rigGusts(asking, subject, rig));
  const hands = rigHands(asking, subject, rig).map((hand) => ({ id: `hand ${hand.piece.ref}`, says: `its own weight and a hand on ${hand.piece.name}`, hand }));
  const loads = [...attitudes(), ...[...gusts, ...hands, ...pushes].map(({ id, says }) => ({ id, says }))];
  const chosen = loads.some(({ id }) => id === load) ? load : 'upright';
  const push = pushes.find(({ id }) => id === chosen);
  const gust = gusts.find(({ id }) => id === chosen)?.gust;
  const hand = hands.find(({ id }) => id === chosen)?.hand;
  // Nothing bears the weight of a rig that falls freely: it is taken to be held where the rest hangs on.
  const floats = rig.stands.contacts.length === 0;
  const solved = push === undefined && floats ? (heldFast(ledger, setup, glass) ?? rig) : rig;
  const nameOf = namesIn(ledger, subject);
  const loose = [...new Set(solved.network.freeMotions.flatMap(({ bodies }) => bodies.map((body) => nameOf(solved.pieceOf(body)))))];
  const forces = viewOf(() => {
    if (loose.length > 0) throw new Error('some pieces are held by nothing and move freely.');
    if (push !== undefined) return pushedBy(asking, subject, rig, push);
    if (gust !== undefined) return weightForces(solved, ATTITUDES.upright, { kind: 'wind', on: gust.on });
    return hand === undefined ? weightForces(solved, ATTITUDES[chosen as Attitude]) : weightForces(solved, ATTITUDES.upright, { kind: 'hand', on: [hand.on] });
  });
  return { build, loads, load: chosen, forces, notes: notesOf(rig, { floats, weight: push === undefined, gust, hand, nameOf, forces }), loose };
}

const attitudes = (): LoadChoice[] => Object.keys(ATTITUDES).map((id) => ({ id, says: `its own weight, ${id}` }));

/** Wind is level, so the rig stands upright in it, and weighs what it weighs. */
const gustsOn = (gusts: readonly RigGust[]): (LoadChoice & { readonly gust: RigGust })[] =>
  gusts.map((gust, at) => ({ id: `gust ${at === 0 ? 'to' : 'fro'}`, says: `its own weight and a gust from ${fromWords(gust.along)}`, gust }));

/** Where a level wind comes from, as the camera sees it. */
function fromWords([x, , z]: Vector): string {
  const words = [z < 0 ? 'ahead' : 'behind', x > 0 ? 'camera right' : 'camera left'];
  const slanting = Math.abs(x) > 0.35 && Math.abs(z) > 0.35;
  return slanting ? words.join(' and ') : (words[Math.abs(x) > Math.abs(z) ? 1 : 0] ?? '');
}

interface Push extends LoadChoice {
  readonly push: ToothPush;
  readonly sense: 1 | -1;
}

/** Each mesh both ways, where ring and driver are both part of the rig. */
function pushesOf({ model }: RigNetwork, pushes: readonly ToothPush[]): Push[] {
  const stands = new Set(model.bodies.map(({ name }) => name));
  return pushes.filter(({ ring, driver }) => stands.has(ring.ref) && stands.has(driver.ref)).flatMap((push, at) => {
    const says = `teeth of ${push.driver.piece.name} on ${push.ring.piece.name}`;
    return [{ id: `teeth ${at} to`, says: `${says}, one way`, push, sense: 1 as const }, { id: `teeth ${at} fro`, says: `${says}, the other way`, push, sense: -1 as const }];
  });
}

/** Across the line between the gears the ring's torque over its radius; along it, away from each other, what spreads standard teeth. */
function pushedBy(asking: Asking, subject: SetupGlass, rig: RigNetwork, { push, sense }: Push): RigForces {
  const acrossN = ringTorque(asking, push.ring.piece, temperatureAt(asking, subject)).value / push.ringRadiusM;
  const forceN = add(scale(push.along, sense * acrossN), scale(push.away, acrossN * SPREADING));
  return pushForces(rig, { ring: push.ring.ref, driver: push.driver.ref, atMm: push.at, forceN });
}

function namesIn(ledger: Ledger, { setup, glass }: SetupGlass): (ref: string) => string {
  const pieces = setupPieces(ledger, setup, glass);
  return (ref) => pieces.get(ref)?.name ?? ref;
}

interface Noted {
  readonly floats: boolean;
  readonly weight: boolean;
  readonly gust: RigGust | undefined;
  readonly hand: RigHand | undefined;
  readonly nameOf: (ref: string) => string;
  readonly forces: View<RigForces>;
}

function notesOf({ stands, springs, unweighed, left }: RigNetwork, { floats, weight, gust, hand, nameOf, forces }: Noted): string[] {
  const untold = forces.ok ? forces.value.untold : [];
  return [
    weight && floats ? `Free in the hands; taken as held at ${nameOf(stands.anchor)}.` : `${stands.says.charAt(0).toUpperCase()}${stands.says.slice(1)}.`,
    ...(weight ? [] : ['The push alone, without the weight: ring torque over the radius of its gear, and what spreads the teeth.']),
    ...(gust === undefined ? [] : [`The gust pushes with ${printAmount({ value: gust.forceN, unit: 'N' })} in all, in ${printAmount({ value: gust.air.speedMps, unit: 'm/s' })} of air (${gust.air.says}), from the side with the largest outline; each piece takes its share by its own. Cables, cloth and flags are left out.`]),
    ...(hand === undefined ? [] : [`The hand presses with ${printAmount({ value: hand.pushN.value, unit: 'N' })} ${origin(hand.pushN)} on the corner furthest from where ${hand.piece.name} is held.`]),
    ...(unweighed.length > 0 && weight ? [`Weighs nothing here, as its mass is not entered: ${unweighed.map(({ name }) => name).join(', ')}.`] : []),
    ...(left.length > 0 ? [`Left out, without a place: ${left.map(({ name }) => name).join(', ')}.`] : []),
    ...(untold.length > 0 ? [`How these share what they carry cannot be told, as none of them gives: ${untold.join(', ')}.`] : []),
    ...(springs.some((hold) => hold !== 'ground' && hold.type.name === 'lens support') ? ['A support that only pushes up is reckoned as if it held down too.'] : []),
    'Estimate, not a load rating.',
  ];
}
