import { bodies } from '../../assembly/space/bodies.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { assume } from '../../shoot/ledger/figures.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { carry } from '../../standards/assumptions/carry.ts';
import type { SetupGlass } from '../subjects.ts';
import type { Grip } from './oneLift.ts';

/** A rig as it is taken hold of. */
export interface LiftedRig {
  /** From the side where one stands: the narrower of its width and length. */
  readonly acrossMm: number;
  /** Hands above its underside: the mean of both. */
  readonly handsMm: number;
  readonly grip: Grip;
  readonly handles: number;
  /** Whether the figures come from where the pieces stand; else they are assumed. */
  readonly placed: boolean;
}

const carrierKind = (piece: SetupPiece) => piece.part.read('carrier/kind') as string | undefined;

/** What a rig is set on and does not go up with it. A gimbal in the hands does. */
export function staysBelow(piece: SetupPiece, purpose: string): boolean {
  const below = purpose === 'gimbal' ? ['legs', 'stand', 'mount', 'head'] : ['legs', 'stand', 'mount', 'head', 'gimbal'];
  return below.includes(carrierKind(piece) ?? '') || ['legs', 'stand', 'head'].includes(piece.part.kind);
}

export const isHandle = (piece: SetupPiece): boolean => piece.part.kind === 'handle' || carrierKind(piece) === 'handles';

/** How a build is taken hold of, less what stays below. */
export function liftedRig(ledger: Ledger, { setup, glass }: SetupGlass, build: string): LiftedRig {
  return ledger.cell(`lifted rig|${setup}|${glass}|${build}`, () => {
    const purpose = ledger.at(`builds/${build}/purpose`) as string;
    const lifted = [...setupPieces(ledger, setup, glass).values()].filter((piece) => piece.build === build && !staysBelow(piece, purpose));
    const refs = new Set(lifted.map(({ ref }) => ref));
    const shapes = bodies(ledger, setup, glass).filter(({ world }) => refs.has(world.piece.ref));
    const handles = lifted.filter(isHandle);
    const grip: Grip = handles.length > 1 ? 'good' : handles.length === 1 || lifted.some(({ part }) => ['cage', 'plate', 'rod'].includes(part.kind)) ? 'fair' : 'poor';
    const across = spans(shapes.map(({ box }) => box));
    const heights = handles.flatMap((handle) => {
      const own = shapes.filter(({ world }) => world.piece.ref === handle.ref).map(({ box }) => (box.low[1] + box.high[1]) / 2);
      return own.length === 0 || across === undefined ? [] : [Math.max(...own) - across.bottom];
    });
    const assumedMm = assume(ledger, carry.handleMm).value;
    const atHandles = handles.map((_, at) => heights[at] ?? assumedMm).toSorted((a, b) => b - a);
    // A hand without a handle goes underneath.
    const handsMm = ((atHandles[0] ?? 0) + (atHandles[1] ?? 0)) / 2;
    const acrossMm = across === undefined ? assume(ledger, carry.acrossMm).value : Math.min(across.wide, across.long);
    return { acrossMm, handsMm: Math.max(0, handsMm), grip, handles: handles.length, placed: across !== undefined };
  });
}

interface Spans {
  readonly wide: number;
  readonly long: number;
  readonly bottom: number;
}

function spans(boxes: readonly { readonly low: readonly number[]; readonly high: readonly number[] }[]): Spans | undefined {
  if (boxes.length === 0) return undefined;
  const low = (axis: number) => Math.min(...boxes.map((box) => box.low[axis] as number));
  const high = (axis: number) => Math.max(...boxes.map((box) => box.high[axis] as number));
  return { wide: high(0) - low(0), long: high(2) - low(2), bottom: low(1) };
}

export interface SetOn {
  /** Height of the rig's underside once it is up. */
  readonly baseMm: number;
  /** `on to its legs`, in a sentence. */
  readonly says: string;
  /** Legs, stand and head that are lifted on their own. */
  readonly below: readonly SetupPiece[];
}

/** Where a rig goes: on legs, a stand, a shoulder, or into the hands. */
export function setOn(ledger: Ledger, { setup, glass }: SetupGlass, build: string): SetOn {
  const purpose = ledger.at(`builds/${build}/purpose`) as string;
  const below = [...setupPieces(ledger, setup, glass).values()].filter((piece) => piece.build === build && staysBelow(piece, purpose));
  if (purpose === 'shoulder') return { baseMm: assume(ledger, carry.shoulderMm).value, says: 'on to a shoulder', below };
  if (purpose === 'handheld' || purpose === 'gimbal' || (purpose === 'other' && below.length === 0)) return { baseMm: assume(ledger, carry.chestMm).value, says: 'to the chest', below };
  const legs = below.find((piece) => ['legs', 'stand', 'mount'].includes(carrierKind(piece) ?? '') || ['legs', 'stand'].includes(piece.part.kind));
  const head = below.find((piece) => carrierKind(piece) === 'head' || piece.part.kind === 'head');
  const standing = legs?.part.figure('carrier/heightMm')?.value ?? assume(ledger, carry.legsMm).value;
  return { baseMm: standing + (head === undefined ? 0 : headHeight(ledger, { setup, glass }, head)), says: onWhat(purpose, legs, head), below };
}

function headHeight(ledger: Ledger, { setup, glass }: SetupGlass, head: SetupPiece): number {
  const own = spansUp(bodies(ledger, setup, glass).filter(({ world }) => world.piece.ref === head.ref && !world.coarse).map(({ box }) => box));
  return own ?? assume(ledger, carry.headMm).value;
}

const spansUp = (boxes: readonly { readonly low: readonly number[]; readonly high: readonly number[] }[]): number | undefined =>
  boxes.length === 0 ? undefined : Math.max(...boxes.map(({ high }) => high[1] as number)) - Math.min(...boxes.map(({ low }) => low[1] as number));

function onWhat(purpose: string, legs: SetupPiece | undefined, head: SetupPiece | undefined): string {
  if (legs !== undefined) return `on to ${head?.name ?? legs.name}`;
  return purpose === 'vehicle' ? 'on to its mount' : 'on to its legs';
}
