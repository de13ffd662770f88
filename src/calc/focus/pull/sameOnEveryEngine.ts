/**
 * Logarithm and sine from +, −, ×, ÷ alone. The built-in ones differ in the last bits between engines; a simulation that
 * asks "is it visibly soft yet?" would turn such a bit into another take. These give the same bits everywhere.
 */

const bits = new DataView(new ArrayBuffer(8));
const HALF_ROOT = Math.SQRT1_2;

/** Natural logarithm of a normal positive number, to about 2e-16. */
export function naturalLog(x: number): number {
  bits.setFloat64(0, x);
  const high = bits.getUint32(0);
  let exponent = (high >>> 20) - 1022;
  bits.setUint32(0, (high & 0xfffff) | (1022 << 20));
  let mantissa = bits.getFloat64(0);
  if (mantissa < HALF_ROOT) {
    mantissa *= 2;
    exponent -= 1;
  }
  // ln m = 2·artanh((m − 1)/(m + 1)), where |s| ≤ 0.172: eleven terms leave 1e-17.
  const s = (mantissa - 1) / (mantissa + 1);
  const square = s * s;
  let sum = 0;
  for (let odd = 21; odd >= 1; odd -= 2) sum = sum * square + 1 / odd;
  return 2 * s * sum + exponent * Math.LN2;
}

/** sin(2π·turns), to about 1e-15 for a few thousand turns. */
export function sinTurns(turns: number): number {
  let part = turns - Math.floor(turns + 0.5);
  if (part > 0.25) part = 0.5 - part;
  else if (part < -0.25) part = -0.5 - part;
  const x = 2 * Math.PI * part;
  const square = x * x;
  let sum = 1;
  for (let n = 20; n >= 2; n -= 2) sum = 1 - (sum * square) / (n * (n + 1));
  return x * sum;
}

/** cos(2π·turns). */
export const cosTurns = (turns: number): number => sinTurns(turns + 0.25);
