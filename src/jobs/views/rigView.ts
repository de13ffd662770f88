import { opticalPath } from '../../assembly/opticalPath.ts';
import { type Placement, placeSetup } from '../../assembly/placing/placeSetup.ts';
import type { RigJoint } from '../../assembly/placing/rigJoints.ts';
import type { SettingKey, TreeStep } from '../../assembly/placing/rigModel.ts';
import { type Transform, type Vector, apply, subtract } from '../../assembly/placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { collisions } from '../../assembly/space/collisions.ts';
import { worldSolids } from '../../assembly/space/worldSolids.ts';
import { wiring } from '../../assembly/lines/wiring.ts';
import { angleOfView } from '../../calc/picture/angleOfView.ts';
import { Asking } from '../../check/Asking.ts';
import { wholeMass } from '../../check/quantities/wholeMass.ts';
import { recording } from '../../check/quantities/recording.ts';
import { lensOf, squeezeOf } from '../../check/quantities/squeezeOf.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import { applyEdit } from '../../shoot/edit/Edit.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { SETTING_KEYS } from '../../shoot/schema/build.ts';
import type { Solid } from '../../shoot/schema/mechanics.ts';
import type { Part } from '../../shoot/schema/part.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { entering } from '../place.ts';
import type { LineKind } from './linesView.ts';
import { viewOf } from './View.ts';

/** What a part is for: its tone in the drawing. */
export type Role = 'camera' | 'glass' | 'screen' | 'radio' | 'power' | 'focus' | 'support';

export interface RigBody {
  readonly ref: string;
  readonly name: string;
  readonly build: string;
  readonly role: Role;
  readonly solids: readonly { readonly solid: Solid; readonly place: Transform; readonly coarse: boolean }[];
}

/** A way a joint can still be moved. */
export interface FreeWay {
  readonly key: SettingKey;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Found by the program, for this lens or for the whole set. */
  readonly solved: 'perLens' | 'shared' | undefined;
}

export interface RigPiece {
  readonly ref: string;
  readonly name: string;
  readonly build: string;
  /** The part of the kit that it is. */
  readonly part: string;
  /** Where it is a piece in the file. */
  readonly path: string;
  /** Why it stands nowhere. */
  readonly unplaced: string | undefined;
  /** The joint that holds it, where one does. */
  readonly heldBy: { readonly path: string; readonly to: string; readonly ways: readonly FreeWay[] } | undefined;
}

export interface RigView {
  readonly builds: readonly { readonly id: string; readonly name: string }[];
  readonly bodies: readonly RigBody[];
  readonly pieces: readonly RigPiece[];
  readonly collisions: readonly { readonly a: string; readonly b: string; readonly depthMm: number; readonly withTravel: boolean; readonly coarse: boolean }[];
  readonly masses: readonly { readonly build: string; readonly massG: number; readonly centreMm: Vector; readonly unknown: number }[];
  readonly lines: readonly { readonly build: string; readonly kind: LineKind; readonly from: Vector; readonly to: Vector }[];
  /** What the camera sees: half angles, from the sensor. */
  readonly sees: { readonly build: string; readonly acrossDeg: number; readonly upDeg: number } | undefined;
  /** Joints that do not hold: points that do not mate, loops that do not close. */
  readonly faults: readonly string[];
}

/** A setup as it stands with one of its glasses on. */
export function rigView(ledger: Ledger, subject: SetupGlass): RigView {
  const { setup, glass } = subject;
  const placement = placeSetup(ledger, setup, glass);
  const pieces = [...setupPieces(ledger, setup, glass).values()];
  const solids = worldSolids(ledger, setup, glass);
  const sees = viewOf(() => seenBy(ledger, subject));
  return {
    builds: [...new Set(pieces.map(({ build }) => build))].map((id) => ({ id, name: (ledger.at(`builds/${id}/name`) as string | undefined) ?? id })),
    bodies: pieces.flatMap((piece) => {
      const own = solids.filter(({ piece: of }) => of.ref === piece.ref);
      return own.length === 0 ? [] : { ref: piece.ref, name: piece.name, build: piece.build, role: ROLES[piece.part.kind] ?? 'support', solids: own.map(({ solid, place, coarse }) => ({ solid, place, coarse })) };
    }),
    pieces: pieces.map((piece) => rigPiece(piece, placement)),
    collisions: collisions(ledger, setup, glass).map(({ a, b, depthMm, withTravel, coarse }) => ({ a: a.ref, b: b.ref, depthMm, withTravel, coarse })),
    masses: massesOf(ledger, subject, pieces),
    lines: linesOf(ledger, subject, placement),
    sees: sees.ok ? sees.value : undefined,
    faults: faultsOf(placement),
  };
}

const ROLES: Partial<Record<Part['kind'], Role>> = {
  body: 'camera', lens: 'glass', block: 'glass', focuser: 'glass', 'close-up': 'glass', filter: 'glass', 'matte box': 'glass', 'mount adapter': 'glass', collar: 'glass', monitor: 'screen', finder: 'screen', transmitter: 'radio',
  receiver: 'radio', converter: 'radio', battery: 'power', 'battery plate': 'power', regulator: 'power', splitter: 'power', charger: 'power', motor: 'focus', 'hand unit': 'focus', 'follow focus': 'focus', controller: 'focus',
};

function rigPiece(piece: SetupPiece, placement: Placement): RigPiece {
  const { ref, name, build, path } = piece;
  const step = placement.model.tree.find(({ child }) => child === ref);
  const unplaced = placement.unplaced.find((one) => one.ref === ref)?.why;
  const parent = step === undefined ? undefined : (step.flipped ? step.joint.b : step.joint.a).piece.name;
  return { ref, name, build, part: piece.part.path.split('/').at(-1) ?? '', path, unplaced, heldBy: step === undefined ? undefined : { path: step.joint.path, to: parent ?? '', ways: waysOf(step, placement) } };
}

/** The ways the joint of a piece can go: those its points declare, and those that are set. */
function waysOf({ joint, fixed, variables, turned }: TreeStep, { settings }: Placement): FreeWay[] {
  const solved = (key: SettingKey) => settings.find((one) => one.joint.path === joint.path && one.key === key);
  return SETTING_KEYS.flatMap((key): FreeWay[] => {
    const range = rangeOf(joint, key);
    const found = variables.some((one) => one.key === key) ? solved(key) : undefined;
    if (range === undefined && found === undefined && fixed[key] === undefined) return [];
    const value = found?.value ?? (fixed[key] ?? 0) * (turned.has(key) ? -1 : 1);
    const [low, high] = range ?? (found === undefined ? [value - WIDE[key], value + WIDE[key]] : [found.low, found.high]);
    return [{ key, value, low: Math.min(low, value), high: Math.max(high, value), solved: found?.scope === 'free' ? undefined : found?.scope }];
  });
}

/** The way a piece goes for one millimetre of a setting of its joint, found by placing the rig twice. */
export function wayAlong(shoot: Shoot, ledger: Ledger, { setup, glass }: SetupGlass, ref: string, key: SettingKey): Vector | undefined {
  const placement = placeSetup(ledger, setup, glass);
  const step = placement.model.tree.find(({ child }) => child === ref);
  const way = step === undefined ? undefined : waysOf(step, placement).find((one) => one.key === key);
  if (step === undefined || way === undefined) return undefined;
  const change = way.value + 1 > way.high ? -1 : 1;
  const moved = applyEdit(shoot, { says: '', patches: entering(shoot, `${step.joint.path}/settings/${key}`, way.value + change) });
  const [from, to] = [placement.places.get(ref)?.t, moved.ok ? placeSetup(new Ledger(moved.value.shoot), setup, glass).places.get(ref)?.t : undefined];
  if (from === undefined || to === undefined) return undefined;
  return subtract(to, from).map((one) => one / change) as unknown as Vector;
}

const WIDE: Readonly<Record<SettingKey, number>> = { turnDeg: 180, tiltDeg: 90, slideMm: 150, sideMm: 60, heightMm: 100 };

function rangeOf({ a, b }: RigJoint, key: SettingKey): readonly [number, number] | undefined {
  return a.point[key] ?? b.point[key];
}

function massesOf(ledger: Ledger, subject: SetupGlass, pieces: readonly SetupPiece[]): RigView['masses'] {
  const asking = new Asking(ledger);
  return [...new Set(pieces.map(({ build }) => build))].flatMap((build) => {
    const whole = wholeMass(asking, subject, build, () => true);
    return whole === undefined ? [] : { build, massG: whole.massG, centreMm: whole.centreMm as Vector, unknown: pieces.filter(({ ref, build: home }) => home === build && !whole.pieces.some(({ piece }) => piece.ref === ref)).length };
  });
}

/** The middle of a part's solids, weighed by their volume, where its centre is not entered. */
function middleOf(solids: readonly Solid[] | undefined): Vector {
  const weighed = (solids ?? []).map((solid) => ({ at: solid.atMm ?? [0, 0, 0], volume: volumeOf(solid) }));
  const whole = weighed.reduce((sum, { volume }) => sum + volume, 0);
  if (whole === 0) return [0, 0, 0];
  return [0, 1, 2].map((axis) => weighed.reduce((sum, { at, volume }) => sum + (at[axis] ?? 0) * volume, 0) / whole) as unknown as Vector;
}

function volumeOf(solid: Solid): number {
  if (solid.shape === 'box') return solid.sizeMm[0] * solid.sizeMm[1] * solid.sizeMm[2];
  const bore = solid.shape === 'tube' ? solid.boreMm : 0;
  return (Math.PI / 4) * (solid.diameterMm ** 2 - bore ** 2) * solid.lengthMm;
}

/** Lines between sockets of placed pieces of one build; a socket without a place is at the middle of its part. */
function linesOf(ledger: Ledger, { setup, glass }: SetupGlass, { places }: Placement): RigView['lines'] {
  return wiring(ledger, setup, glass).lines.flatMap(({ from, to, shared }) => {
    const [a, b] = [from, to].map(({ piece, port }) => {
      const place = places.get(piece.ref);
      return place === undefined ? undefined : apply(place, port.at ?? middleOf(piece.part.read('solids') as readonly Solid[] | undefined));
    });
    return shared || a === undefined || b === undefined || from.piece.build !== to.piece.build ? [] : { build: from.piece.build, kind: from.port.kind, from: a, to: b };
  });
}

function seenBy(ledger: Ledger, subject: SetupGlass): RigView['sees'] {
  const asking = new Asking(ledger);
  const path = opticalPath(ledger, subject.setup, subject.glass);
  const { sensorWidth, sensorHeight } = recording(asking, subject);
  const focal = asking.figure(lensOf(path, subject.glass).part, 'lens/focalLengthMm');
  const { horizontalDeg, verticalDeg } = angleOfView({ focalLengthMm: focal.value, sensorWidthMm: sensorWidth.value, sensorHeightMm: sensorHeight.value, squeeze: squeezeOf(asking, subject).value });
  return path.body === undefined ? undefined : { build: path.body.build, acrossDeg: horizontalDeg / 2, upDeg: verticalDeg / 2 };
}

function faultsOf({ loops, model }: Placement): string[] {
  const open = loops.filter(({ closes }) => !closes).map(({ joint, misfitMm }) => `${joint.a.piece.name} and ${joint.b.piece.name} do not meet: ${misfitMm.toFixed(1)} mm apart.`);
  const wrong = [...model.tree, ...model.loops].flatMap(({ joint }) => (joint.fault === undefined ? [] : `${joint.a.piece.name} and ${joint.b.piece.name} do not mate: ${joint.fault}.`));
  return [...open, ...wrong];
}

