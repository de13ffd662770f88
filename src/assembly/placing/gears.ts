import { assume } from '../../shoot/ledger/figures.ts';
import { picture } from '../../standards/assumptions/picture.ts';
import type { SetupPiece } from '../setupPieces.ts';
import { pieceSetting } from '../setupPieces.ts';

/** A gear as it sits on a piece: the ring of a lens or focuser, the gear of a motor or a follow focus. */
export interface Gear {
  readonly on: 'ring' | 'motor' | 'wheel';
  /** Pitch diameter over teeth, mm. */
  readonly module: number;
  readonly teeth: number;
  readonly faceMm: number | undefined;
  /** A split ring that bumps at the join. */
  readonly split: boolean;
  /** How far it moves along the axis of its part from infinity to close. */
  readonly travelMm: number;
}

const FACETS = { focus: 'ring', motor: 'motor', handWheel: 'wheel' } as const;

/** The gear of a piece: with the one fitted to a motor, or another where one is tried. `undefined` where it has none. */
export function gearOf(piece: SetupPiece, tried?: number): Gear | undefined {
  const { part } = piece;
  const facet = (['focus', 'motor', 'handWheel'] as const).find((one) => part.read(`${one}/gear`) !== undefined);
  if (facet === undefined) return undefined;
  const module = part.figure(`${facet}/gear/module`)?.value;
  const own = part.read(`${facet}/gear/teeth`) as number | undefined;
  const teeth = facet === 'focus' ? own : (tried ?? pieceSetting(piece, 'gearTeeth') ?? own);
  if (module === undefined || teeth === undefined) return undefined;
  return {
    on: FACETS[facet], module, teeth, faceMm: part.figure(`${facet}/gear/faceMm`)?.value, split: part.read(`${facet}/gear/split`) === true,
    travelMm: facet === 'focus' ? (part.figure('focus/gearTravelMm')?.value ?? 0) : 0,
  };
}

/** Two gears that are to turn each other, and what they need for it. */
export interface GearPair {
  readonly a: Gear;
  readonly b: Gear;
  /** Distance of the axes at which the pitch circles touch: m·(z₁ + z₂)/2, of unlike modules each its own (ISO 53, ISO 21771). */
  readonly centreDistanceMm: number;
  /** Width that both faces should share at either end of the focus travel; `undefined` where a face width is not entered. */
  readonly wantedFaceMm: number | undefined;
  /** How far the middles of the faces may lie apart at the middle of the travel. */
  readonly offsetAllowedMm: number;
  /** Travel of one gear past the other over the whole focus range. */
  readonly travelMm: number;
}

export function gearPair(one: SetupPiece, other: SetupPiece, tried?: number): GearPair | undefined {
  const [a, b] = [gearOf(one, tried), gearOf(other, tried)];
  if (a === undefined || b === undefined) return undefined;
  const faces = a.faceMm === undefined || b.faceMm === undefined ? undefined : ([a.faceMm, b.faceMm] as const);
  const wantedFaceMm = faces === undefined ? undefined : Math.min(...faces) * assume(one.part.ledger, picture.gearFaceShare).value;
  const travelMm = Math.abs(a.travelMm) + Math.abs(b.travelMm);
  const offsetAllowedMm = faces === undefined || wantedFaceMm === undefined ? 0 : Math.max(0, (faces[0] + faces[1]) / 2 - wantedFaceMm - travelMm / 2);
  return { a, b, centreDistanceMm: (a.module * a.teeth + b.module * b.teeth) / 2, wantedFaceMm, offsetAllowedMm, travelMm };
}

/** Which of two gears drives, and which is the ring of a lens or focuser that is driven, whichever way the joint is written. */
export function drivenBy<End>({ gearA, joint }: { readonly gearA: Gear | 'none'; readonly joint: { readonly a: End; readonly b: End } }): { readonly driver: End; readonly driven: End } {
  const backwards = gearA !== 'none' && gearA.on !== 'ring';
  return backwards ? { driver: joint.a, driven: joint.b } : { driver: joint.b, driven: joint.a };
}
