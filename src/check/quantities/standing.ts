import type { CableEnd } from '../../assembly/hold/cableMasses.ts';
import { type PieceMass, centreOf, pieceMasses } from '../../assembly/hold/pieceMasses.ts';
import { shapeOf } from '../../assembly/coarseShape.ts';
import { type Placement, placeSetup } from '../../assembly/placing/placeSetup.ts';
import { IDENTITY, type Transform, type Vector, apply } from '../../assembly/placing/Transform.ts';
import { type SetupPiece, pieceSetting, setupPieces } from '../../assembly/setupPieces.ts';
import { worldHulls } from '../../assembly/space/worldSolids.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Point, Solid } from '../../shoot/schema/mechanics.ts';
import { balance } from '../../standards/assumptions/balance.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { listed } from './listed.ts';
import { buildLoad, weightNotes } from './wholeMass.ts';

/** A build on its legs or stand, as what could tip over. Heights are above the floor. */
export interface Standing {
  readonly legs: SetupPiece;
  readonly footRadius: Figure;
  readonly feet: Figure;
  readonly height: Figure;
  /** Legs and all that is on them, sandbags apart. */
  readonly massG: number;
  readonly legsG: number;
  /** Of the legs alone, and of all together. */
  readonly legsCentreMm: number;
  readonly centreMm: number;
  /** How far that centre stands out from over the middle of the feet. */
  readonly aheadMm: number;
  readonly ballastG: number;
  readonly topMm: number;
  /** Height of the floor in the frame of the build, for what is placed; `undefined` where nothing on the legs is. */
  readonly floorY: number | undefined;
  /** What has no place: taken to sit on top, over the middle. */
  readonly unplaced: readonly SetupPiece[];
  /** What stands on it and has no mass. */
  readonly unweighed: readonly Unweighed[];
  /** What is taken for granted, in words. */
  readonly notes: readonly string[];
}

/** A piece whose mass is not entered, and where its centre is all the same: above the floor, and out from the middle of the feet. */
export interface Unweighed {
  readonly piece: SetupPiece;
  readonly upMm: number;
  readonly outMm: number;
}

const kindOf = (piece: SetupPiece) => piece.part.read('carrier/kind') as string | undefined;
const isLegs = (piece: SetupPiece): boolean => ['legs', 'stand'].includes(kindOf(piece) ?? '');

/** The legs and stands of a build: it stands on one of them. */
export function legsOf(ledger: Ledger, { setup, glass }: SetupGlass, build: string): SetupPiece[] {
  return [...setupPieces(ledger, setup, glass).values()].filter((piece) => piece.build === build && isLegs(piece));
}

/** A text where it cannot be told what stands on what; `undefined` where the build has no legs. */
export function standingOf(asking: Asking, subject: SetupGlass, build: string): Standing | string | undefined {
  const { ledger } = asking;
  return ledger.cell(`standing|${subject.setup}|${subject.glass}|${build}`, () => {
    const found = legsOf(ledger, subject, build);
    const [legs] = found;
    if (legs === undefined) return undefined;
    if (found.length > 1) return `It cannot be told what stands on ${listed(found.map(({ name }) => name))}: make a build of each.`;
    const { massG: legsMass, footRadius, height } = asking.figures(legs.part, { massG: 'massG', footRadius: 'carrier/footRadiusMm', height: 'carrier/heightMm' });
    const all = buildLoad(ledger, subject, build, () => true);
    const { weighed } = all;
    const load = weighed.filter(({ piece }) => piece.ref !== legs.ref);
    const ground = groundOf(ledger, subject, legs, height.value);
    const legsCentreMm = legsCentre(asking, legs, weighed.find(({ piece }) => piece.ref === legs.ref), ground, height.value);
    const masses = [{ massG: legsMass.value, at: [0, legsCentreMm, 0] as Vector }, ...load.map((one) => ({ massG: one.massG, at: standsAt(one, ground, height.value) })), ...all.cables.map((one) => ({ massG: one.massG, at: hangsAt(one, ground, height.value) }))];
    const massG = masses.reduce((sum, one) => sum + one.massG, 0);
    const mean = (axis: 0 | 1 | 2): number => masses.reduce((sum, one) => sum + one.massG * one.at[axis], 0) / massG;
    const unplaced = ownPieces(ledger, subject, build).filter((piece) => piece.ref !== legs.ref && (ground === undefined || !ground.placed.has(piece.ref)));
    return {
      legs, footRadius, height, massG, legsG: legsMass.value, legsCentreMm, centreMm: mean(1), aheadMm: Math.hypot(mean(0), mean(2)), unplaced, unweighed: all.unweighed.map((piece) => centreWhateverWeighed(placeSetup(ledger, subject.setup, subject.glass), piece, ground, height.value)),
      feet: legs.part.figure('carrier/feet') ?? asking.assume(balance.feet), ballastG: pieceSetting(legs, 'ballastG') ?? 0,
      topMm: Math.max(height.value, ground?.topMm ?? 0, ...unplaced.map((piece) => height.value + ownHeight(piece))), floorY: ground?.floorY, notes: [...notesOn(ground, legs, unplaced), ...weightNotes(all)],
    };
  });
}

const ownPieces = (ledger: Ledger, { setup, glass }: SetupGlass, build: string): SetupPiece[] => [...setupPieces(ledger, setup, glass).values()].filter((piece) => piece.build === build);

interface Ground {
  readonly floorY: number;
  /** Over the middle of the feet. */
  readonly middle: readonly [x: number, z: number];
  readonly topMm: number;
  /** What stands on the legs in the common frame. */
  readonly placed: ReadonlySet<string>;
  readonly legsPlaced: boolean;
}

/** Where the floor lies below what is placed: by the legs' own place, else the lowest corner of the rig is taken to sit on top of them. */
function groundOf(ledger: Ledger, { setup, glass }: SetupGlass, legs: SetupPiece, heightMm: number): Ground | undefined {
  const { places } = placeSetup(ledger, setup, glass);
  const placed = new Set([...places.keys()].filter((ref) => ref.startsWith(`${legs.build}/`) && ref !== legs.ref));
  let [lowest, highest] = [Infinity, -Infinity];
  for (const [{ piece }, hull] of worldHulls(ledger, setup, glass)) {
    if (!placed.has(piece.ref)) continue;
    for (const corner of hull) {
      lowest = Math.min(lowest, corner[1]);
      highest = Math.max(highest, corner[1]);
    }
  }
  const stand = places.get(legs.ref);
  if (stand !== undefined) {
    const [x, y, z] = apply(stand, seatOf(ledger, { setup, glass }, legs, stand));
    return { floorY: y - heightMm, middle: [x, z], topMm: highest === -Infinity ? heightMm : highest - y + heightMm, placed, legsPlaced: true };
  }
  if (highest === -Infinity) return undefined;
  const masses = pieceMasses(ledger, setup, glass, legs.build).weighed.filter(({ piece }) => placed.has(piece.ref));
  const massG = masses.reduce((sum, one) => sum + one.massG, 0);
  const mean = (axis: 0 | 2): number => (massG > 0 ? masses.reduce((sum, one) => sum + one.massG * one.centreMm[axis], 0) / massG : 0);
  return { floorY: lowest - heightMm, middle: [mean(0), mean(2)], topMm: highest - lowest + heightMm, placed, legsPlaced: false };
}

/** The top of the legs, in their own frame: the point that something stands on, else the highest one, else their origin. */
function seatOf(ledger: Ledger, { setup, glass }: SetupGlass, legs: SetupPiece, stand: Transform): Vector {
  const { model } = placeSetup(ledger, setup, glass);
  const used = [...model.tree, ...model.loops].flatMap(({ joint: { a, b } }) => [a, b]).find((end) => end.ref === legs.ref)?.point.at;
  const all = Object.values((legs.part.read('points') ?? {}) as Readonly<Record<string, Point>>).flatMap(({ at }) => (at === undefined ? [] : [at]));
  const highest = all.toSorted((one, other) => apply(stand, other)[1] - apply(stand, one)[1])[0];
  return used ?? highest ?? [0, 0, 0];
}

/** Its own centre, where that or solids of at least half its height are entered; else a share of the height. */
function legsCentre(asking: Asking, legs: SetupPiece, mass: PieceMass | undefined, ground: Ground | undefined, heightMm: number): number {
  const { solids, coarse } = shapeOf(legs.part);
  const told = legs.part.read('centreMm') !== undefined || (!coarse && spanOf(solids) >= heightMm / 2);
  if (told && ground?.legsPlaced === true && mass !== undefined) return Math.max(0, mass.centreMm[1] - ground.floorY);
  return asking.assume(balance.legsCentreShare).value * heightMm;
}

function spanOf(solids: readonly Solid[]): number {
  const ends = solids.flatMap((solid) => {
    const half = (solid.shape === 'box' ? solid.sizeMm[1] : solid.along === 'y' ? solid.lengthMm : solid.diameterMm) / 2;
    return [(solid.atMm?.[1] ?? 0) - half, (solid.atMm?.[1] ?? 0) + half];
  });
  return ends.length === 0 ? 0 : Math.max(...ends) - Math.min(...ends);
}

/** How tall a piece is by itself. */
export const ownHeight = (piece: SetupPiece): number => spanOf(shapeOf(piece.part).solids);

/** Where a load stands from the floor and the middle of the feet; without a place, upright on top. */
function standsAt({ piece, centreMm }: Pick<PieceMass, 'piece' | 'centreMm'>, ground: Ground | undefined, heightMm: number): Vector {
  if (ground === undefined || !ground.placed.has(piece.ref)) return [0, heightMm + ownHeight(piece) / 2, 0];
  return [centreMm[0] - ground.middle[0], Math.max(0, centreMm[1] - ground.floorY), centreMm[2] - ground.middle[1]];
}

function centreWhateverWeighed({ places }: Placement, piece: SetupPiece, ground: Ground | undefined, heightMm: number): Unweighed {
  const [x, y, z] = standsAt({ piece, centreMm: apply(places.get(piece.ref) ?? IDENTITY, centreOf(piece.part)) }, ground, heightMm);
  return { piece, upMm: y, outMm: Math.hypot(x, z) };
}

/** A plug in the legs themselves, or in what has no place, hangs on top. */
const hangsAt = ({ piece, atMm }: CableEnd, ground: Ground | undefined, heightMm: number): Vector =>
  atMm === undefined ? [0, heightMm, 0] : standsAt({ piece, centreMm: atMm }, ground, heightMm);

function notesOn(ground: Ground | undefined, legs: SetupPiece, unplaced: readonly SetupPiece[]): string[] {
  return [
    ...(ground?.legsPlaced === false ? [`${legs.name} has no place in the rig: the rig is taken to stand on it with its lowest corner, its centre over the middle.`] : []),
    ...(unplaced.length === 0 ? [] : [`Without a place, and taken to sit on top over the middle: ${listed(unplaced.map(({ name }) => name))}.`]),
  ];
}
