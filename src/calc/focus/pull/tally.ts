/** What some takes came to: counts only, so that merging them in any grouping gives the same bits. Travels between workers as it is. */
export interface Tally {
  /** Trials [from, from + softFrames.length). */
  readonly from: number;
  readonly softFrames: Uint32Array;
  readonly longestSoftFrames: Uint32Array;
  readonly largestBlurMm: Float64Array;
  /** Absent where only the takes count. */
  readonly bands: BandTally | undefined;
}

export interface BandTally {
  /** Frames in each column of time. */
  readonly stride: number;
  /** Per column: how many frames fell into each bin of blur, over all takes. */
  readonly bins: Uint32Array | Float64Array;
  readonly softFrames: Uint32Array | Float64Array;
}

/** Columns of time in the bands; a longer shot puts several frames into each. */
const MOST_COLUMNS = 480;

// Bins of blur over the circle of confusion: eight to an octave, from 2⁻⁶ to 2¹⁰, and one for all that is less.
const LEAST_OCTAVE = -6;
const OCTAVES = 16;
const PER_OCTAVE = 8;
export const BINS = OCTAVES * PER_OCTAVE + 1;

export const bandColumns = (frames: number): { stride: number; columns: number } => {
  const stride = Math.ceil(frames / MOST_COLUMNS);
  return { stride, columns: Math.ceil(frames / stride) };
};

export function emptyTally(from: number, trials: number, frames: number, withBands: boolean): Tally {
  const { stride, columns } = bandColumns(frames);
  return {
    from,
    softFrames: new Uint32Array(trials),
    longestSoftFrames: new Uint32Array(trials),
    largestBlurMm: new Float64Array(trials),
    bands: withBands ? { stride, bins: new Uint32Array(columns * BINS), softFrames: new Uint32Array(columns) } : undefined,
  };
}

/** A tally to merge others into; its bands can count further than 2³². */
export function ledgerTally(trials: number, frames: number, withBands: boolean): Tally {
  const { bands, ...tally } = emptyTally(0, trials, frames, withBands);
  if (bands === undefined) return { ...tally, bands };
  const { stride, bins, softFrames } = bands;
  return { ...tally, bands: { stride, bins: new Float64Array(bins.length), softFrames: new Float64Array(softFrames.length) } };
}

const single = new Float32Array(1);
const singleBits = new Int32Array(single.buffer);

/** Which bin a blur falls into: the exponent and the first three bits of the fraction of a float are a scale of eighths of octaves. */
export function binOf(blurOverCircle: number): number {
  single[0] = blurOverCircle;
  const bin = (singleBits[0]! >> 20) - ((127 + LEAST_OCTAVE) << 3) + 1;
  return bin < 0 ? 0 : bin >= BINS ? BINS - 1 : bin;
}

/** Lower edge of a bin, as a multiple of the circle of confusion: the same bits backwards. */
export function binEdge(bin: number): number {
  if (bin <= 0) return 0;
  singleBits[0] = (bin - 1 + ((127 + LEAST_OCTAVE) << 3)) << 20;
  return single[0]!;
}

/** Adds a part to the whole it belongs to. */
export function mergeTally(into: Tally, part: Tally): void {
  const at = part.from - into.from;
  into.softFrames.set(part.softFrames, at);
  into.longestSoftFrames.set(part.longestSoftFrames, at);
  into.largestBlurMm.set(part.largestBlurMm, at);
  if (into.bands === undefined || part.bands === undefined) return;
  add(into.bands.bins, part.bands.bins);
  add(into.bands.softFrames, part.bands.softFrames);
}

function add(into: BandTally['bins'], part: BandTally['bins']): void {
  for (let i = 0; i < into.length; i++) into[i]! += part[i]!;
}
