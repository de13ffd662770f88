import { opticalPath } from '../../assembly/opticalPath.ts';
import type { SettingValues } from '../../assembly/placing/jointFrame.ts';
import { type Placement, placeSetup } from '../../assembly/placing/placeSetup.ts';
import { placePieces } from '../../assembly/placing/residuals.ts';
import type { RigJoint } from '../../assembly/placing/rigJoints.ts';
import type { RigModel, SettingKey, TreeStep, Variable } from '../../assembly/placing/rigModel.ts';
import { type Transform, type Vector, apply, subtract } from '../../assembly/placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { collisions } from '../../assembly/space/collisions.ts';
import { worldSolids } from '../../assembly/space/worldSolids.ts';
import { wiring } from '../../assembly/lines/wiring.ts';
import { angleOfView } from '../../calc/picture/angleOfView.ts';
import { Asking } from '../../check/Asking.ts';
import { recording } from '../../check/quantities/recording.ts';
import { lensOf, squeezeOf } from '../../check/quantities/squeezeOf.ts';
import type { SetupGlass } from '../../check/subjects.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { SETTING_KEYS } from '../../shoot/schema/build.ts';
import type { Solid } from '../../shoot/schema/mechanics.ts';
import type { Part } from '../../shoot/schema/part.ts';
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
  /** Way the piece goes for a step of one, in the frame of its build; nothing for turns. */
  readonly along: Vector | undefined;
}

export interface RigPiece {
  readonly ref: string;
  readonly name: string;
  readonly build: string;
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
    masses: massesOf(pieces, placement),
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
  return { ref, name, build, path, unplaced, heldBy: step === undefined ? undefined : { path: step.joint.path, to: parent ?? '', ways: waysOf(step, placement) } };
}

/** The ways the joint of a piece can go: those its points declare, and those that are set. */
function waysOf(step: TreeStep, placement: Placement): FreeWay[] {
  const { model, settings } = placement;
  const values = new Map(model.variables.map((variable, at) => [variable, settings[at]?.value ?? variable.start] as const));
  return SETTING_KEYS.flatMap((key): FreeWay[] => {
    const range = rangeOf(step.joint, key);
    const variable = step.variables.find((one) => one.key === key);
    const stated = step.fixed[key];
    if (range === undefined && variable === undefined && stated === undefined) return [];
    const value = variable === undefined ? (stated ?? 0) : (values.get(variable) ?? variable.start);
    const [low, high] = range ?? (variable === undefined ? [value - WIDE[key], value + WIDE[key]] : [variable.low, variable.high]);
    return [{ key, value, low: Math.min(low, value), high: Math.max(high, value), solved: variable?.scope, along: key.endsWith('Mm') ? alongOf(step, key, value, model, values) : undefined }];
  });
}

const WIDE: Readonly<Record<SettingKey, number>> = { turnDeg: 180, tiltDeg: 90, slideMm: 150, sideMm: 60, heightMm: 100 };

function rangeOf({ a, b }: RigJoint, key: SettingKey): readonly [number, number] | undefined {
  return a.point[key] ?? b.point[key];
}

/** How the piece moves for one millimetre of a setting, found by placing it twice. */
function alongOf(step: TreeStep, key: SettingKey, value: number, model: RigModel, values: ReadonlyMap<Variable, number>): Vector {
  const at = (change: number): Vector => {
    const fixed: SettingValues = { ...step.fixed, [key]: value + change };
    const tree = model.tree.map((one) => (one === step ? { ...one, fixed, variables: one.variables.filter((variable) => variable.key !== key) } : one));
    return placePieces({ ...model, tree }, values).get(step.child)?.t ?? [0, 0, 0];
  };
  return subtract(at(1), at(0));
}

function massesOf(pieces: readonly SetupPiece[], { places }: Placement): RigView['masses'] {
  const builds = new Map<string, { massG: number; moment: [number, number, number]; unknown: number }>();
  for (const { ref, build, part } of pieces) {
    const place = places.get(ref);
    const sum = builds.get(build) ?? { massG: 0, moment: [0, 0, 0], unknown: 0 };
    builds.set(build, sum);
    const mass = part.figure('massG')?.value;
    if (place === undefined || mass === undefined) {
      sum.unknown += 1;
      continue;
    }
    const centre = apply(place, (part.read('centreMm') as Vector | undefined) ?? middleOf(part.read('solids') as readonly Solid[] | undefined));
    sum.massG += mass;
    for (const axis of [0, 1, 2] as const) sum.moment[axis] += mass * centre[axis];
  }
  return [...builds].flatMap(([build, { massG, moment, unknown }]) => (massG === 0 ? [] : { build, massG, centreMm: moment.map((one) => one / massG) as unknown as Vector, unknown }));
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

