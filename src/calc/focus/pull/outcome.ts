import { ringSpeedDegPerS } from './drive.ts';
import { modelLimits } from './modelLimits.ts';
import { angleOfDistance } from './ringScale.ts';
import type { Shot } from './shot.ts';
import { fastestWantedDegPerS } from './subject.ts';
import { BINS, type BandTally, type Tally, bandColumns, binEdge } from './tally.ts';
import { crossoverRadPerS, wholeDelayS } from './takes.ts';
import type { Axis, Variant } from './variants.ts';

/** What a set of takes came to. "Worst tenth": the mean over the tenth of the takes that came out worst in this respect. */
export interface Summary {
  shareSharp: number;
  shareSharpWorstTenth: number;
  takesSharpThroughout: number;
  longestSoftS: number;
  longestSoftWorstTenthS: number;
  largestBlurMm: number;
  largestBlurWorstTenthMm: number;
}

/** A column of time: the blur that one, five and nine takes in ten stay within, and the share of soft frames. Only judged frames. */
export interface Band {
  atS: number;
  distanceMm: number;
  tenthMm: number;
  medianMm: number;
  nineTenthsMm: number;
  shareSoft: number;
}

export interface Curve {
  axis: Axis;
  points: ({ at: number | string } & Summary)[];
}

/** What one change alone gives, on the same takes; `standardError` is that of the gain. */
export interface Change {
  change: string;
  shareSharp: number;
  gain: number;
  standardError: number;
  longestSoftS: number;
}

export interface PullOutcome extends Summary {
  standardError: number;
  wholeDelayMs: number;
  crossoverRadPerS: number;
  wantedDegPerS: number;
  motorDegPerS: number;
  bands: Band[];
  whatIf: Curve[];
  changes: Change[];
  limits: string[];
}

export interface Counted {
  readonly shot: Pick<Shot, 'judgedFrames' | 'given'>; // no tables: variants are many
  readonly tally: Tally;
}

/** Puts the counts of the planned shot and of its variants, in the order of `variants`, into words and numbers. */
export function outcomeOf(shot: Shot, tally: Tally, variants: readonly Variant[], counted: readonly Counted[]): PullOutcome {
  const { given } = shot;
  const shares = sharesSharp({ shot, tally });
  const delayS = wholeDelayS(given, given.reactionMs);
  return {
    ...summaryOf({ shot, tally }),
    standardError: standardErrorOf(shares),
    wholeDelayMs: delayS * 1000,
    crossoverRadPerS: crossoverRadPerS(delayS, shot.marginRad, given.crossoverCapRadPerS),
    wantedDegPerS: fastestWantedDegPerS(given.keyframes, (distanceMm) => angleOfDistance(shot.blur.scale, distanceMm)),
    motorDegPerS: ringSpeedDegPerS(given),
    bands: bandsOf(shot, tally),
    whatIf: curvesOf(variants, counted),
    changes: changesOf(shares, variants, counted),
    limits: modelLimits(given),
  };
}

export function summaryOf(counted: Counted): Summary {
  const { tally, shot } = counted;
  const shares = sharesSharp(counted);
  const longest = Float64Array.from(tally.longestSoftFrames, (frames) => frames / shot.given.frameRateHz);
  return {
    shareSharp: mean(shares),
    shareSharpWorstTenth: 1 - worstTenth(shares.map((share) => 1 - share)),
    takesSharpThroughout: tally.softFrames.reduce((sum, soft) => sum + (soft === 0 ? 1 : 0), 0) / shares.length,
    longestSoftS: mean(longest),
    longestSoftWorstTenthS: worstTenth(longest),
    largestBlurMm: mean(tally.largestBlurMm),
    largestBlurWorstTenthMm: worstTenth(tally.largestBlurMm),
  };
}

/** Mean of the largest tenth. */
function worstTenth(values: Float64Array): number {
  return mean(values.slice().sort().subarray(-Math.ceil(values.length / 10)));
}

function sharesSharp({ tally, shot }: Counted): Float64Array {
  return Float64Array.from(tally.softFrames, (soft) => 1 - soft / shot.judgedFrames);
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function standardErrorOf(values: Float64Array): number {
  if (values.length < 2) return 0;
  const centre = mean(values);
  const squares = values.reduce((sum, value) => sum + (value - centre) * (value - centre), 0);
  return Math.sqrt(squares / (values.length - 1) / values.length);
}

function curvesOf(variants: readonly Variant[], counted: readonly Counted[]): Curve[] {
  const curves = new Map<Axis, Curve>();
  variants.forEach(({ axis, at }, i) => {
    if (axis === undefined) return;
    if (!curves.has(axis)) curves.set(axis, { axis, points: [] });
    curves.get(axis)!.points.push({ at, ...summaryOf(counted[i]!) });
  });
  return [...curves.values()];
}

/** Best first. The gain is taken take by take against the plan: the same actor, the same slips. */
function changesOf(planned: Float64Array, variants: readonly Variant[], counted: readonly Counted[]): Change[] {
  return variants
    .flatMap(({ axis, at }, i): Change[] => {
      if (axis !== undefined) return [];
      const shares = sharesSharp(counted[i]!);
      const gains = shares.map((share, trial) => share - planned[trial]!);
      const { shareSharp, longestSoftS } = summaryOf(counted[i]!);
      return [{ change: String(at), shareSharp, gain: mean(gains), standardError: standardErrorOf(gains), longestSoftS }];
    })
    .sort((a, b) => b.gain - a.gain);
}

function bandsOf({ frames, given, subject }: Shot, { bands }: Tally): Band[] {
  if (bands === undefined) return [];
  const { columns, stride } = bandColumns(frames);
  return Array.from({ length: columns }, (_, column) => column).flatMap((column) => {
    const bins = bands.bins.subarray(column * BINS, (column + 1) * BINS);
    const count = sumOf(bins);
    if (count === 0) return [];
    const middle = Math.min(frames - 1, column * stride + (stride - 1) / 2);
    const blurMm = (share: number) => given.circleOfConfusionMm * quantile(bins, count * share);
    return [{
      atS: middle / given.frameRateHz, distanceMm: subject.distanceMm[Math.floor(middle)]!, tenthMm: blurMm(0.1), medianMm: blurMm(0.5),
      nineTenthsMm: blurMm(0.9), shareSoft: bands.softFrames[column]! / count,
    }];
  });
}

function sumOf(bins: BandTally['bins']): number {
  let sum = 0;
  for (const one of bins) sum += one;
  return sum;
}

/** The value that `rank` of the counted ones stay within, even within a bin; the last bin has no upper edge and gives its lower. */
function quantile(bins: BandTally['bins'], rank: number): number {
  let below = 0;
  for (let bin = 0; bin < BINS - 1; bin++) {
    const inBin = bins[bin]!;
    if (inBin > 0 && below + inBin >= rank) {
      const lower = binEdge(bin);
      return lower + (binEdge(bin + 1) - lower) * Math.max(0, (rank - below) / inBin);
    }
    below += inBin;
  }
  return binEdge(BINS - 1);
}
