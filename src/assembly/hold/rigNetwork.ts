import { FloatingNetwork } from '../../calc/mechanics/network/FloatingNetwork.ts';
import { Network } from '../../calc/mechanics/network/Network.ts';
import type { NetworkBeam, NetworkBody, NetworkModel, NetworkSpring } from '../../calc/mechanics/network/model.ts';
import { NO_INERTIA } from '../../calc/mechanics/massProperties.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type Placement, placeSetup } from '../placing/placeSetup.ts';
import type { ModelJoint } from '../placing/rigModel.ts';
import type { Vector } from '../placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../setupPieces.ts';
import { type JointHold, jointHold } from './jointHold.ts';
import { type PieceMass, axesOf, pieceMasses } from './pieceMasses.ts';
import { type Rod, rodOf } from './rod.ts';
import { type StandsOn, standsOn } from './standsOn.ts';

/** A camera build as rigid bodies, springs and beams. */
export interface RigNetwork {
  readonly network: Network | FloatingNetwork;
  readonly model: NetworkModel;
  readonly stands: StandsOn;
  /** What each spring stands for: a joint, or a place where the ground holds. */
  readonly springs: readonly (JointHold | 'ground')[];
  /** The rod that each beam is a stretch of. */
  readonly beams: readonly SetupPiece[];
  /** The network's body that a piece is; of a rod, its first stretch. */
  readonly bodyOf: (ref: string) => string;
  /** The piece that a body is, or is a stretch of. */
  readonly pieceOf: (body: string) => string;
  /** Pieces that weigh nothing here because their mass is not entered. */
  readonly unweighed: readonly SetupPiece[];
  /** Pieces of the build that have no place, and are left out. */
  readonly left: readonly SetupPiece[];
}

/** What is varied where a cure is tried: further springs, joints that are taken apart, or another ground. */
export interface Variation {
  readonly key: string;
  readonly springs?: readonly NetworkSpring[];
  /** Paths of joints that hold nothing. */
  readonly apart?: ReadonlySet<string>;
  /** Hold the anchor fast, whatever the build stands on. */
  readonly heldFast?: boolean;
}

export const GROUND = 'ground';
/** Upright axes of a place on the ground: z up. */
const UPRIGHT = [[1, 0, 0], [0, 0, -1], [0, 1, 0]] as const;

/** The camera build of a setup as a network, factored when it is first asked for; `undefined` where fewer than two of its pieces have a place. */
export function rigNetwork(ledger: Ledger, setup: string, glass: string, variation?: Variation): RigNetwork | undefined {
  return ledger.cell(`rig network|${setup}|${glass}|${variation?.key ?? ''}`, () => {
    const rig = rigParts(ledger, setup, glass);
    if (rig === undefined) return undefined;
    const { stands, unweighed, left } = rig;
    const { holds, joints, bodies, beams, rods } = variation?.apart === undefined ? rig : jointed(rig, rig.holds.filter(({ joint }) => variation.apart?.has(joint.path) !== true));
    const contacts = variation?.heldFast === true ? [] : stands.contacts;
    const floats = contacts.length === 0 && variation?.heldFast !== true;
    const ground: Ground = { contacts, floats, heldFast: variation?.heldFast === true ? stands.anchor : undefined, more: variation?.springs ?? [] };
    const model = modelOf({ joints, bodies, beams, rods }, ground);
    let network: RigNetwork['network'] | undefined;
    return {
      get network() {
        return (network ??= floats ? new FloatingNetwork(model) : new Network(model));
      },
      model, stands, springs: [...holds, ...contacts.map(() => GROUND as 'ground')], beams: beams.map(({ piece }) => piece),
      bodyOf: (ref) => rods.get(ref)?.bodies[0]?.name ?? ref, pieceOf: pieceOfBody(rods), unweighed, left,
    };
  });
}

/** What all variations of a rig have in common. */
interface Rig {
  readonly own: readonly SetupPiece[];
  readonly masses: ReadonlyMap<string, PieceMass>;
  readonly placement: Placement;
  readonly stands: StandsOn;
  readonly unweighed: readonly SetupPiece[];
  readonly left: readonly SetupPiece[];
}

function rigParts(ledger: Ledger, setup: string, glass: string): (Rig & Jointed) | undefined {
  return ledger.cell(`rig parts|${setup}|${glass}`, () => {
    const placement = placeSetup(ledger, setup, glass);
    const build = ledger.at(`setups/${setup}/camera`) as string;
    const stands = standsOn(ledger, setup, glass, build);
    const all = [...setupPieces(ledger, setup, glass).values()].filter((piece) => piece.build === build);
    const own = all.filter(({ ref }) => placement.places.has(ref) && !stands.below.has(ref));
    if (own.length < 2) return undefined;
    const { weighed, unweighed } = pieceMasses(ledger, setup, glass, build);
    const masses = new Map(weighed.map((mass) => [mass.piece.ref, mass]));
    const rig: Rig = { own, masses, placement, stands, unweighed, left: all.filter(({ ref }) => !placement.places.has(ref)) };
    return { ...rig, ...jointed(rig, jointsAmong(placement, new Set(own.map(({ ref }) => ref)))) };
  });
}

function pieceOfBody(rods: ReadonlyMap<string, Rod>): (body: string) => string {
  const stretches = new Map([...rods].flatMap(([ref, { bodies }]) => bodies.map(({ name }) => [name, ref] as const)));
  return (body) => stretches.get(body) ?? body;
}

/** Joints between placed pieces of the build; gears that mesh push, but hold nothing. */
function jointsAmong({ model, ...placement }: Placement, own: ReadonlySet<string>): JointHold[] {
  const among = ({ joint: { a, b } }: ModelJoint) => own.has(a.ref) && own.has(b.ref) && a.ref !== b.ref;
  return [...model.tree, ...model.loops].filter(among).map((joint) => jointHold(joint, { ...placement, model }));
}

interface Parts {
  readonly bodies: readonly NetworkBody[];
  readonly rods: ReadonlyMap<string, Rod>;
  readonly beams: readonly { readonly piece: SetupPiece; readonly beam: NetworkBeam }[];
  /** A spring for each joint that holds. */
  readonly joints: readonly NetworkSpring[];
}

interface Jointed extends Parts {
  readonly holds: readonly JointHold[];
}

/** Every piece is one body, but a rod that can bend: it is a body at each clamp, with beams between. */
function jointed({ own, masses, placement: { places } }: Rig, holds: readonly JointHold[]): Jointed {
  const rods = new Map<string, Rod>();
  const bodies = own.flatMap((piece): readonly NetworkBody[] => {
    const mass = masses.get(piece.ref);
    const place = places.get(piece.ref);
    const rod = place === undefined ? undefined : rodOf(piece, place, mass?.massG ?? 0, holds.filter(({ joint }) => joint.a.ref === piece.ref || joint.b.ref === piece.ref).map(({ at }) => at.t));
    if (rod !== undefined) {
      rods.set(piece.ref, rod);
      return rod.bodies;
    }
    return [{ name: piece.ref, massG: mass?.massG ?? 0, centreMm: mass?.centreMm ?? place?.t ?? [0, 0, 0], inertiaKgM2: mass?.inertiaKgM2 ?? NO_INERTIA }];
  });
  const joints = holds.map(({ joint, at, stiffness }): NetworkSpring => ({ a: nodeAt(rods, joint.a.ref, at.t), b: nodeAt(rods, joint.b.ref, at.t), atMm: at.t, axes: axesOf(at), stiffness }));
  return { holds, joints, bodies, rods, beams: [...rods.values()].flatMap((rod) => rod.beams.map((beam) => ({ piece: rod.piece, beam }))) };
}

const nodeAt = (rods: Parts['rods'], ref: string, at: Vector): string => rods.get(ref)?.nodeAt(at) ?? ref;

interface Ground {
  readonly contacts: StandsOn['contacts'];
  readonly floats: boolean;
  readonly heldFast: string | undefined;
  readonly more: readonly NetworkSpring[];
}

function modelOf({ bodies, rods, beams, joints }: Parts, { contacts, floats, heldFast, more }: Ground): NetworkModel {
  const feet = contacts.map(({ ref, atMm, type }): NetworkSpring => ({ a: GROUND, b: nodeAt(rods, ref, atMm), atMm, axes: UPRIGHT, stiffness: type.stiffness }));
  const still: NetworkBody[] = floats || heldFast !== undefined ? [] : [{ name: GROUND, centreMm: [0, 0, 0], fixed: true }];
  const fast = heldFast === undefined ? bodies : bodies.map((body) => (body.name === heldFast || body.name === rods.get(heldFast)?.bodies[0]?.name ? { ...body, fixed: true } : body));
  return { bodies: [...still, ...fast], springs: [...joints, ...feet, ...more], beams: beams.map(({ beam }) => beam) };
}
