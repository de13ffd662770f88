import type { PartView } from '../../shoot/ledger/PartView.ts';
import type { Point, Solid } from '../../shoot/schema/mechanics.ts';
import { shapeOf } from '../coarseShape.ts';
import type { SetupPiece } from '../setupPieces.ts';
import { type Values, type Way, chainOf, settingsWith, wayBetween } from './chain.ts';
import { type MeshFit, meshFit } from './constraints.ts';
import type { MeshResult, Placement } from './placeSetup.ts';
import type { JointEnd, RigJoint } from './rigJoints.ts';
import { type TreeStep, type Variable, rangeOf } from './rigModel.ts';
import { type Vector, dot, unit } from './Transform.ts';

/** A clamp holds on about half its width past its middle. Common practice: clamps are 20 to 30 mm wide. */
export const PAST_CLAMP_MM = 12;

/** From end to end of a rod, along the way out of one of its points and counted from that point. */
export type Span = readonly [low: number, high: number];

/** As the shape that is entered says; else as its point may slide, where that is about its length; else from the point onwards. */
export function rodSpan(rod: PartView, point: Point): Span | undefined {
  const length = rod.figure('beam/lengthMm')?.value;
  const { at, slideMm } = point;
  if (at === undefined || point.out === undefined) return undefined;
  const out = unit(point.out, [0, 0, 1]);
  const { solids, coarse } = shapeOf(rod);
  const reach = coarse ? [] : solids.flatMap((solid) => reachOf(solid, at, out));
  if (reach.length > 0) return [Math.min(...reach), Math.max(...reach)];
  if (length === undefined) return undefined;
  return slideMm !== undefined && slideMm[1] - slideMm[0] > length / 2 && slideMm[0] < 0 ? [(slideMm[0] + slideMm[1] - length) / 2, (slideMm[0] + slideMm[1] + length) / 2] : [0, length];
}

function reachOf(solid: Solid, from: Vector, out: Vector): number[] {
  const middle = solid.atMm ?? [0, 0, 0];
  const half = solid.shape === 'box' ? solid.sizeMm.map((size) => size / 2) : (['x', 'y', 'z'] as const).map((one) => (one === solid.along ? solid.lengthMm : solid.diameterMm) / 2);
  const at = dot([middle[0] - from[0], middle[1] - from[1], middle[2] - from[2]], out);
  const by = out.reduce((sum, value, axis) => sum + Math.abs(value) * (half[axis] as number), 0);
  return [at - by, at + by];
}

/** The two ends of a joint of a clamp on a rod; `undefined` of any other. */
export function rodEnds({ a, b }: RigJoint): { readonly rod: JointEnd; readonly clamp: JointEnd } | undefined {
  if (a.point.kind === 'rod' && b.point.kind === 'rod clamp') return { rod: a, clamp: b };
  return a.point.kind === 'rod clamp' && b.point.kind === 'rod' ? { rod: b, clamp: a } : undefined;
}

/** A slide of a clamp on a rod that would bring two gears face to face, if it could go that far. */
export interface RodShift {
  readonly step: TreeStep;
  readonly rod: SetupPiece;
  /** The setting as it is, and how much it would have to grow. */
  readonly value: number;
  readonly byMm: number;
  /** What it may be at most and at least by its points, and so that half a clamp is left on the rod; `undefined` where neither is entered. */
  readonly range: Span | undefined;
  /** What lets the setting be found, where something does. */
  readonly variable: Variable | undefined;
}

/** The clamps on rods between two gears that stand off each other along their axes, and how far each would have to go by itself; the nearest to the gear at end `b` last. */
export function rodShifts({ model, values }: Placement, mesh: MeshResult): RodShift[] {
  const { pair } = mesh;
  const own = model.meshes.find(({ joint }) => joint === mesh.joint);
  if (own === undefined || pair === undefined) return [];
  const way = wayBetween(model, mesh.joint.a.ref, mesh.joint.b.ref);
  const fitAt = (one: readonly Way[]): MeshFit => meshFit(own, pair, chainOf(one, values, new Map())(new Float64Array(0)));
  const stands = fitAt(way);
  return way.flatMap(({ step }): RodShift[] => {
    const ends = rodEnds(step.joint);
    if (ends === undefined || !slides(step)) return [];
    const moved = fitAt(way.map((one) => (one.step === step ? { ...one, step: slid(step, values, 1) } : one)));
    const each = moved.midOffsetMm - stands.midOffsetMm;
    // Only what runs along the axis of the gears; askew it would part them.
    if (Math.abs(each) < 0.99) return [];
    const value = settingsWith(step, values).slideMm ?? 0;
    return [{ step, rod: ends.rod.piece, value, byMm: -stands.midOffsetMm / each, range: slideRange(step, ends), variable: step.variables.find(({ key }) => key === 'slideMm') }];
  });
}

/** A seat that takes the end of a rod does not let it slide. */
const slides = ({ joint, fixed, variables }: TreeStep): boolean => rangeOf(joint, 'slideMm') !== undefined || fixed.slideMm !== undefined || variables.some(({ key }) => key === 'slideMm');

function slid(step: TreeStep, values: Values, byMm: number): TreeStep {
  return { ...step, fixed: { ...settingsWith(step, values), slideMm: (settingsWith(step, values).slideMm ?? 0) + byMm }, variables: [] };
}

function slideRange({ joint }: TreeStep, { rod }: { rod: JointEnd }): Span | undefined {
  const stated = rangeOf(joint, 'slideMm');
  const span = rodSpan(rod.piece.part, rod.point);
  if (span === undefined) return stated;
  // Whichever end the joint begins at: what moves along the clamp's way out takes the clamp along the rod's.
  const held: Span = [span[0] + PAST_CLAMP_MM, span[1] - PAST_CLAMP_MM];
  return stated === undefined ? held : [Math.max(stated[0], held[0]), Math.min(stated[1], held[1])];
}
