/** A number worked out from figures, with the doubt it inherits from them. A `Figure` is one too. */
export interface Bounded {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export const sure = (value: number): Bounded => ({ value, low: value, high: value });

/** Sum; every part may be out at once. */
export const sumOf = (parts: readonly Bounded[]): Bounded =>
  parts.reduce((sum, part) => ({ value: sum.value + part.value, low: sum.low + part.low, high: sum.high + part.high }), sure(0));

/** Product of numbers that are not negative. */
export const productOf = (parts: readonly Bounded[]): Bounded =>
  parts.reduce((product, part) => ({ value: product.value * part.value, low: product.low * part.low, high: product.high * part.high }), sure(1));

/** The number through a function that only ever rises, or only ever falls. */
export function through(bounded: Bounded, map: (value: number) => number): Bounded {
  const [a, b] = [map(bounded.low), map(bounded.high)];
  return { value: map(bounded.value), low: Math.min(a, b), high: Math.max(a, b) };
}
