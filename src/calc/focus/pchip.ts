/** A smooth curve through points that overshoots none of them, prepared once and cheap to evaluate in loops. */
export interface Pchip {
  /** The first and the last x. */
  readonly first: number;
  readonly last: number;
  /** The curve at x. Throws a `RangeError` outside the points, rounding aside: it does not extrapolate. */
  readonly evaluate: (x: number) => number;
  /** Its slope at x. */
  readonly slope: (x: number) => number;
  /** The x at which this same curve has the value y. Only where the points rise or fall throughout. */
  readonly inverse: (y: number) => number;
}

/**
 * Piecewise cubic Hermite interpolation that keeps the shape of its points: between two points it is monotone.
 * Slopes inside: weighted harmonic mean of the neighbouring secants, 0 where they differ in sign; at the ends: three-point
 * formula, kept to the sign of the secant and at most three times it.
 * @source Fritsch & Butland, A method for constructing local monotone piecewise cubic interpolants, 1984; ends as in SciPy's
 * PchipInterpolator (Moler, Numerical Computing with MATLAB, 2004)
 */
export function pchip({ x, y }: { readonly x: readonly number[]; readonly y: readonly number[] }): Pchip {
  if (x.length < 2 || x.length !== y.length) throw new RangeError(`pchip needs two points or more, as many x as y; got ${x.length} and ${y.length}`);
  const wrong = x.findIndex((value, k) => k > 0 && !(value > x[k - 1]!));
  if (wrong > 0) throw new RangeError(`pchip needs x in rising order; x[${wrong}] is not above the one before`);
  const knots = Float64Array.from(x);
  const cubics = cubicsThrough(x, y);
  const find = finder(knots);
  const first = knots[0]!;
  const last = knots[knots.length - 1]!;
  const within = (value: number): number => {
    if (value >= first && value <= last) return value;
    const held = heldWithin(value, first, last);
    if (held === undefined) throw new RangeError(`pchip is known from ${first} to ${last}; asked at ${value}`);
    return held;
  };
  return {
    first,
    last,
    evaluate(value) {
      const place = within(value);
      const k = find(place);
      const t = place - knots[k]!;
      const c = 4 * k;
      return ((cubics[c + 3]! * t + cubics[c + 2]!) * t + cubics[c + 1]!) * t + cubics[c]!;
    },
    slope(value) {
      const place = within(value);
      const k = find(place);
      const t = place - knots[k]!;
      const c = 4 * k;
      return (3 * cubics[c + 3]! * t + 2 * cubics[c + 2]!) * t + cubics[c + 1]!;
    },
    inverse: inverter(knots, Float64Array.from(y), cubics),
  };
}

/** A value between two ends, or the end that it passes by no more than rounding; `undefined` beyond. */
export function heldWithin(value: number, low: number, high: number): number | undefined {
  const rounding = 2 ** -48 * Math.max(Math.abs(low), Math.abs(high));
  if (!(value >= low - rounding && value <= high + rounding)) return undefined;
  return Math.min(Math.max(value, low), high);
}

/** The interval that holds a value. It tries the last one first: in loops the next value is mostly there. */
function finder(knots: Float64Array): (value: number) => number {
  let kept = 0;
  return (value) => {
    if (value >= knots[kept]! && value <= knots[kept + 1]!) return kept;
    let low = 0;
    let high = knots.length - 1;
    while (high - low > 1) {
      const middle = (low + high) >>> 1;
      if (knots[middle]! <= value) low = middle;
      else high = middle;
    }
    kept = low;
    return low;
  };
}

/** Four coefficients an interval, from the constant up, in x less the interval's start. */
function cubicsThrough(x: readonly number[], y: readonly number[]): Float64Array {
  const widths = x.slice(1).map((value, k) => value - x[k]!);
  const secants = widths.map((width, k) => (y[k + 1]! - y[k]!) / width);
  const slopes = slopesAt(widths, secants);
  const cubics = new Float64Array(4 * widths.length);
  widths.forEach((width, k) => {
    const bend = (slopes[k]! + slopes[k + 1]! - 2 * secants[k]!) / width;
    cubics.set([y[k]!, slopes[k]!, (secants[k]! - slopes[k]!) / width - bend, bend / width], 4 * k);
  });
  return cubics;
}

function slopesAt(widths: readonly number[], secants: readonly number[]): number[] {
  const end = secants.length - 1;
  if (end === 0) return [secants[0]!, secants[0]!];
  const inside = secants.slice(1).map((after, k) => meanSlope(widths[k]!, widths[k + 1]!, secants[k]!, after));
  return [
    endSlope(widths[0]!, widths[1]!, secants[0]!, secants[1]!),
    ...inside,
    endSlope(widths[end]!, widths[end - 1]!, secants[end]!, secants[end - 1]!),
  ];
}

function meanSlope(widthBefore: number, widthAfter: number, before: number, after: number): number {
  if (Math.sign(before) * Math.sign(after) <= 0) return 0;
  const weightBefore = 2 * widthAfter + widthBefore;
  const weightAfter = widthAfter + 2 * widthBefore;
  return (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
}

function endSlope(width: number, nextWidth: number, secant: number, nextSecant: number): number {
  const slope = ((2 * width + nextWidth) * secant - width * nextSecant) / (width + nextWidth);
  if (Math.sign(slope) !== Math.sign(secant)) return 0;
  if (Math.sign(secant) !== Math.sign(nextSecant) && Math.abs(slope) > 3 * Math.abs(secant)) return 3 * secant;
  return slope;
}

/** Solves the curve's own cubic, by Newton's steps kept between bounds that close in, so that it always ends. */
function inverter(knots: Float64Array, heights: Float64Array, cubics: Float64Array): (y: number) => number {
  const end = heights.length - 1;
  const sign = Math.sign(heights[end]! - heights[0]!);
  const monotone = sign !== 0 && heights.every((height, k) => k === 0 || (height - heights[k - 1]!) * sign > 0);
  const rising = heights.map((height) => height * sign);
  const find = finder(rising);
  return (y) => {
    if (!monotone) throw new RangeError('a pchip has an inverse only where its points rise or fall throughout');
    const target = heldWithin(y * sign, rising[0]!, rising[end]!);
    if (target === undefined) throw new RangeError(`pchip runs from ${heights[0]} to ${heights[end]}; asked for ${y}`);
    const k = find(target);
    if (target === rising[k]) return knots[k]!;
    if (target === rising[k + 1]) return knots[k + 1]!;
    const width = knots[k + 1]! - knots[k]!;
    return Math.min(knots[k]! + rootWithin(cubics, 4 * k, width, target * sign), knots[k + 1]!);
  };
}

/** The t from 0 to `width` at which the cubic at `c` has the value y. */
function rootWithin(cubics: Float64Array, c: number, width: number, y: number): number {
  const [c1, c2, c3] = [cubics[c + 1]!, cubics[c + 2]!, cubics[c + 3]!];
  const missing = cubics[c]! - y;
  const rounding = 2 ** -53 * Math.abs(y);
  const secant = c1 + (c2 + c3 * width) * width;
  const direction = Math.sign(secant);
  let low = 0;
  let high = width;
  let t = width * firstGuess(-missing / (secant * width), c1 / secant, (c1 + (2 * c2 + 3 * c3 * width) * width) / secant);
  for (let turn = 0; turn < 200; turn += 1) {
    const left = ((c3 * t + c2) * t + c1) * t + missing;
    if (Math.abs(left) <= rounding) return t;
    if (left * direction > 0) high = t;
    else low = t;
    const newton = t - left / (c1 + (2 * c2 + 3 * c3 * t) * t);
    const next = newton >= low && newton <= high ? newton : (low + high) / 2;
    if (Math.abs(next - t) <= 2 ** -52 * width) return next;
    t = next;
  }
  return t;
}

/** Where the mirrored Hermite cubic puts it, all scaled to 1: two or three Newton steps are left to do. */
function firstGuess(part: number, slopeBefore: number, slopeAfter: number): number {
  const before = slopeBefore > 1 / 3 ? 1 / slopeBefore : 3; // a slope of 0 may come out as −0, or a hair below
  const after = slopeAfter > 1 / 3 ? 1 / slopeAfter : 3;
  const rest = 1 - part;
  return part * (part * (1 + 2 * rest) + before * rest * rest - after * part * rest);
}
