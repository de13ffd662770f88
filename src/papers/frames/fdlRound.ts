/** The rounding of the ASC Framing Decision List, specification 2.0.1. */
export interface FdlRounding {
  readonly even: 'whole' | 'even';
  readonly mode: 'up' | 'down' | 'round';
}

/**
 * Rounds a length in pixels. To whole numbers a half goes to the even one; to even numbers what is half way goes away from nought.
 * What is a hair off a whole number is that number: products are not exact in binary.
 */
export function fdlRound(value: number, { even, mode }: FdlRounding): number {
  const step = even === 'even' ? 2 : 1;
  const steps = value / step;
  const near = Math.round(steps);
  if (Math.abs(steps - near) < 1e-9) return near * step;
  if (mode === 'up') return Math.ceil(steps) * step;
  if (mode === 'down') return Math.floor(steps) * step;
  const half = Math.abs(steps - Math.floor(steps) - 0.5) < 1e-9;
  if (!half) return near * step;
  return even === 'even' ? Math.ceil(steps) * step : 2 * Math.round(steps / 2);
}

export interface FdlRect {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly xPx: number;
  readonly yPx: number;
}

export interface FdlFrame {
  readonly frame: FdlRect;
  /** The frame with what is kept free around it; the frame itself where nothing is. */
  readonly protected: FdlRect;
}

/** The frame of an intent in a canvas: the protected one is rounded first, the frame within it next, both centred. */
export function fdlFrame(given: { canvasWidthPx: number; canvasHeightPx: number; squeeze: number; aspectWidth: number; aspectHeight: number; protection: number; rounding: FdlRounding }): FdlFrame {
  const { canvasWidthPx, canvasHeightPx, squeeze, aspectWidth, aspectHeight, protection, rounding } = given;
  const aspect = aspectWidth / aspectHeight;
  const wide = (canvasWidthPx * squeeze) / canvasHeightPx >= aspect;
  const [width, height] = wide ? [(canvasHeightPx * aspect) / squeeze, canvasHeightPx] : [canvasWidthPx, (canvasWidthPx * squeeze) / aspect];
  const within = (value: number, most: number) => {
    const rounded = fdlRound(value, rounding);
    return rounded <= most ? rounded : value >= most - 1e-6 ? most : fdlRound(value, { ...rounding, mode: 'down' });
  };
  const guarded = { widthPx: within(width, canvasWidthPx), heightPx: within(height, canvasHeightPx) };
  const kept = 1 - protection;
  const frame = { widthPx: within(guarded.widthPx * kept, guarded.widthPx), heightPx: within(guarded.heightPx * kept, guarded.heightPx) };
  const centred = (size: { widthPx: number; heightPx: number }): FdlRect => ({ ...size, xPx: (canvasWidthPx - size.widthPx) / 2, yPx: (canvasHeightPx - size.heightPx) / 2 });
  return { frame: centred(frame), protected: centred(guarded) };
}

/** An aspect as two whole numbers: 2.39 as 239 to 100, 1.7778 as 16 to 9. */
export function wholeAspect(aspect: number): { readonly width: number; readonly height: number } {
  for (let height = 1; height <= 12; height += 1) {
    const width = Math.round(aspect * height);
    if (Math.abs(width / height - aspect) < 1e-4 && (height > 1 || Math.abs(width - aspect) < 1e-9)) return { width, height };
  }
  for (const height of [100, 1000, 10_000, 100_000]) {
    const width = Math.round(aspect * height);
    if (Math.abs(width / height - aspect) < 1e-9 || height === 100_000) return { width, height };
  }
  return { width: Math.round(aspect * 100), height: 100 };
}
