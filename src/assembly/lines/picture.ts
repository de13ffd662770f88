import type { Figure } from '../../shoot/ledger/figures.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import type { SetupPiece } from '../setupPieces.ts';
import type { Refusal } from './carriage.ts';
import type { WiredLine, WiredPort } from './wiring.ts';

/** A moving picture on a line: what a sender sends and a receiver must take. */
export interface Picture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly frameRateHz: number;
  readonly interlaced: boolean;
  /** A progressive frame sent in two segments. */
  readonly segmented: boolean;
  readonly mapping: 'level A' | 'level B' | undefined;
  readonly sampling: '4:2:2' | '4:4:4' | '4:2:0';
  readonly bitDepth: 8 | 10 | 12;
}

/** What a leg of the way adds in time: a figure, or the place where it should be entered. */
export type LegDelay = { readonly figure: Figure } | { readonly missing: { readonly part: PartView; readonly path: string } };

/** One leg of a picture's way, linked to the one before it. Legs are shared by all paths that run over them. */
export interface Leg {
  readonly before: Leg | undefined;
  readonly kind: 'camera' | 'source' | 'cable' | 'device' | 'air';
  /** The piece this leg ends in. */
  readonly piece: SetupPiece;
  readonly port: WiredPort | undefined;
  readonly line: WiredLine | undefined;
  /** The transmitter's mode, for a leg over the air: its key and the part that has it. */
  readonly mode: string | undefined;
  /** The picture after this leg; `undefined` where none arrives, and then `dark` says why. */
  readonly picture: Picture | undefined;
  /** The first cause on the way that keeps the picture from coming. */
  readonly dark: Dark | undefined;
  readonly delay: LegDelay | undefined;
  /** Who has de-squeezed the picture so far. */
  readonly desqueezedBy: readonly SetupPiece[];
}

/** Why no picture comes. */
export type Dark =
  | { readonly kind: 'unfed'; readonly port: WiredPort }
  | { readonly kind: 'passes nothing on' | 'dead output' | 'circle'; readonly port: WiredPort }
  | { readonly kind: 'not entered'; readonly missing: readonly { readonly part: PartView; readonly path: string }[] }
  | { readonly kind: 'unsound line'; readonly line: WiredLine }
  | { readonly kind: 'refused'; readonly line: WiredLine; readonly picture: Picture; readonly refusals: readonly Refusal[] }
  | { readonly kind: 'cannot make'; readonly port: WiredPort; readonly picture: Picture }
  | { readonly kind: 'no net' | 'no transmitter' | 'no mode set'; readonly piece: SetupPiece }
  | { readonly kind: 'mode unknown to the receiver' | 'set to another mode' | 'another band' | 'too many frames'; readonly transmitter: SetupPiece; readonly receiver: SetupPiece; readonly mode: string };

/** The legs of a path in order, from the camera on. */
export function legsOf(last: Leg): Leg[] {
  const legs: Leg[] = [];
  for (let leg: Leg | undefined = last; leg !== undefined; leg = leg.before) legs.push(leg);
  return legs.toReversed();
}
