import type { Face } from '../type/Fonts.ts';

/** Black is 0, white is 1. */
export type Tone = number;

/** Something on a page. Lengths in mm from its upper left corner, y downwards; type in points. */
export type Mark =
  | { readonly kind: 'path'; /** SVG path of absolute M, L, C and Z. */ readonly d: string; readonly stroke?: Stroke; readonly fill?: Tone }
  | {
      readonly kind: 'text'; readonly text: string; /** Where the baseline starts, or its middle or end. */ readonly x: number; readonly y: number; readonly face: Face; readonly sizePt: number;
      readonly align?: 'start' | 'middle' | 'end'; readonly turnDeg?: number; readonly tone?: Tone;
    }
  /** What lies outside the clip is not printed. */
  | { readonly kind: 'clip'; readonly d: string; readonly marks: readonly Mark[] };

export interface Stroke {
  readonly widthMm: number;
  readonly tone?: Tone;
  readonly dash?: readonly number[];
}

export interface Page {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly Mark[];
}
