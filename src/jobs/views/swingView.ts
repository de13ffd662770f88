import type { RigJoint } from '../../assembly/placing/rigJoints.ts';
import { carriedWords } from '../../assembly/hold/carriedOn.ts';
import { type RigNetwork, rigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { type Vector, apply, length, scale } from '../../assembly/placing/Transform.ts';
import { setupPieces } from '../../assembly/setupPieces.ts';
import { type WorldSolid, worldSolids } from '../../assembly/space/worldSolids.ts';
import type { Motion } from '../../calc/mechanics/network/Motion.ts';
import { type OwnSwing, ownSwings } from '../../check/quantities/ownSwings.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Solid } from '../../shoot/schema/mechanics.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { type View, viewOf } from './View.ts';

/** How a stiff piece swings: it shifts and turns about its middle, to one end of the swing. */
export interface StiffSwing {
  readonly ref: string;
  readonly aboutMm: Vector;
  readonly shiftMm: Vector;
  readonly turnRad: Vector;
}

/** How a rod swings: each place along it by itself, as it bends. */
export interface RodSwing {
  readonly ref: string;
  readonly diameterMm: number;
  readonly places: readonly { readonly atMm: Vector; readonly shiftMm: Vector }[];
}

/** One way the rig swings, sized so that its furthest point goes 1 mm to either side. */
export interface Swing {
  readonly frequencyHz: number;
  /** The joint with the most of the swing's energy, and its share; absent where what holds the rig has it. */
  readonly rules: { readonly says: string; readonly share: number } | undefined;
  /** How far each piece goes to either side where it goes furthest; the most first. */
  readonly reach: readonly { readonly name: string; readonly mm: number }[];
  readonly stiff: readonly StiffSwing[];
  readonly rods: readonly RodSwing[];
}

export interface SwingView {
  readonly build: string;
  /** From corner to corner of what swings. */
  readonly sizeMm: number;
  readonly stands: string;
  readonly swings: readonly Swing[];
  readonly notes: readonly string[];
}

/** More are of no use to somebody with a screwdriver. */
const SHOWN = 3;

/** The lowest swings of the rig itself: studied work, done on a shoot of its own. The first is the one that `hold.wobble` judges. */
export function swingView(shoot: Shoot, subject: SetupGlass): View<SwingView> {
  return viewOf(() => {
    const ledger = new Ledger(shoot);
    const rig = rigNetwork(ledger, subject.setup, subject.glass);
    if (rig === undefined) throw new Error('fewer than two pieces of the camera have a place.');
    const nameOf = (ref: string) => setupPieces(ledger, subject.setup, subject.glass).get(ref)?.name ?? ref;
    const loose = rig.network.freeMotions.flatMap(({ bodies }) => bodies.map((body) => nameOf(rig.pieceOf(body))));
    if (loose.length > 0) throw new Error(`held by nothing, and moving freely: ${[...new Set(loose)].join(', ')}.`);
    const standing = standingIn(ledger, subject, rig);
    const swings = ownSwings(ledger, subject, { count: SHOWN }).map((swing) => swingOf(standing, swing, { nameOf, wordsOf: (joint) => carriedWords(ledger, subject.setup, subject.glass, joint) }));
    if (swings.length === 0) throw new Error(`nothing in the rig itself swings, only what holds it gives.${rig.unweighed.length > 0 ? ` No mass is entered for ${rig.unweighed.map(({ name }) => name).join(', ')}.` : ''}`);
    return { build: ledger.at(`setups/${subject.setup}/camera`) as string, sizeMm: sizeOf(standing), stands: rig.stands.contacts.length === 0 ? rig.stands.says : 'held fast where it stands', swings, notes: notesOf(rig) };
  });
}

/** A piece of the network as it stands, with the corners of its shape. */
interface Standing {
  readonly ref: string;
  /** The bodies that it is, along it where it is a rod. */
  readonly bodies: readonly { readonly name: string; readonly atMm: Vector }[];
  readonly cornersMm: readonly Vector[];
  readonly diameterMm: number;
}

function standingIn(ledger: Ledger, { setup, glass }: SetupGlass, { model, pieceOf }: RigNetwork): Standing[] {
  const { places } = placeSetup(ledger, setup, glass);
  const solids = worldSolids(ledger, setup, glass);
  const pieces = new Map<string, { name: string; atMm: Vector }[]>();
  for (const { name, centreMm } of model.bodies) {
    const ref = pieceOf(name);
    if (places.has(ref)) pieces.set(ref, [...(pieces.get(ref) ?? []), { name, atMm: centreMm }]);
  }
  return [...pieces].map(([ref, bodies]) => {
    const own = solids.filter(({ piece }) => piece.ref === ref);
    return { ref, bodies, cornersMm: own.length === 0 ? bodies.map(({ atMm }) => atMm) : own.flatMap(cornersOf), diameterMm: Math.max(1, ...own.map(({ solid }) => thickness(solid))) };
  });
}

function cornersOf({ solid, place }: WorldSolid): Vector[] {
  const [x, y, z] = boxRound(solid);
  return [-0.5, 0.5].flatMap((a) => [-0.5, 0.5].flatMap((b) => [-0.5, 0.5].map((c) => apply(place, [a * x, b * y, c * z]))));
}

function boxRound(solid: Solid): Vector {
  if (solid.shape === 'box') return solid.sizeMm;
  const side = (along: 'x' | 'y' | 'z') => (solid.along === along ? solid.lengthMm : solid.diameterMm);
  return [side('x'), side('y'), side('z')];
}

const thickness = (solid: Solid): number => (solid.shape === 'box' ? Math.min(...solid.sizeMm) : solid.diameterMm);

function sizeOf(standing: readonly Standing[]): number {
  const corners = standing.flatMap(({ cornersMm }) => cornersMm);
  const span = [0, 1, 2].map((k) => corners.reduce(([low, high], one) => [Math.min(low, one[k] ?? 0), Math.max(high, one[k] ?? 0)] as const, [Infinity, -Infinity] as const));
  return Math.hypot(...span.map(([low, high]) => high - low));
}

interface Words {
  readonly nameOf: (ref: string) => string;
  readonly wordsOf: (joint: RigJoint) => string;
}

function swingOf(standing: readonly Standing[], { mode, shares }: OwnSwing, { nameOf, wordsOf }: Words): Swing {
  const reach = standing.map(({ ref, bodies, cornersMm }) => {
    const moves = bodies.length > 1 ? bodies.map(({ name, atMm }) => mode.shape.shiftAt(name, atMm)) : cornersMm.map((corner) => mode.shape.shiftAt(bodies[0]?.name ?? ref, corner));
    return { ref, mm: Math.max(...moves.map(length)) };
  });
  const furthest = reach.reduce((most, one) => (one.mm > most.mm ? one : most));
  const toOneMm = 1 / furthest.mm;
  const ruling = shares.find(({ spring }) => spring !== 'ground');
  const joint = ruling === undefined || ruling.spring === 'ground' ? undefined : ruling.spring.joint;
  return {
    frequencyHz: mode.frequencyHz, reach: reach.map(({ ref, mm }) => ({ name: nameOf(ref), mm: mm * toOneMm })).toSorted((a, b) => b.mm - a.mm),
    rules: joint === undefined || ruling === undefined ? undefined : { says: wordsOf(joint), share: ruling.share },
    stiff: standing.filter(({ bodies }) => bodies.length === 1).map((one) => stiffSwing(mode.shape, one, toOneMm)),
    rods: standing.filter(({ bodies }) => bodies.length > 1).map(({ ref, bodies, diameterMm }) => ({
      ref, diameterMm, places: bodies.map(({ name, atMm }) => ({ atMm, shiftMm: scale(mode.shape.shiftAt(name, atMm), toOneMm) })),
    })),
  };
}

function stiffSwing(shape: Motion, { ref, bodies }: Standing, by: number): StiffSwing {
  const { name, atMm } = bodies[0] as Standing['bodies'][number];
  return { ref, aboutMm: atMm, shiftMm: scale(shape.shiftAt(name, atMm), by), turnRad: scale(shape.turnDegOf(name), (by * Math.PI) / 180) };
}

function notesOf({ unweighed, left }: RigNetwork): string[] {
  return [
    ...(unweighed.length > 0 ? [`Weighs nothing here, as its mass is not entered: ${unweighed.map(({ name }) => name).join(', ')}.`] : []),
    ...(left.length > 0 ? [`Left out, without a place: ${left.map(({ name }) => name).join(', ')}.`] : []),
    'Stiffness is estimated: read the order of the joints, not the hertz.',
  ];
}
