import { naturalLog } from './sameOnEveryEngine.ts';

/**
 * Random numbers by counter: each is a function of (seed, trial, purpose, index) and of nothing that was drawn before. So
 * any worker can run any trial, and two variants of a shot meet the same actor, the same sway and the same slips.
 */

/** What a number is drawn for; each purpose has its own sequence. */
export const PURPOSE = { tape: 1, landing: 2, stop: 3, timing: 4, reaction: 5, miss: 6, sway: 7, remnant: 8, guess: 9 } as const;
export type Purpose = (typeof PURPOSE)[keyof typeof PURPOSE];

const words = new Uint32Array(2);

/** A standard normal number. */
export function normal(seed: number, trial: number, purpose: Purpose, index: number): number {
  threefry(seed, trial, purpose, index, words);
  const uniform = ((words[0]! >>> 6) * 0x4000000 + (words[1]! >>> 6) + 0.5) / 0x10000000000000;
  return normalQuantile(uniform);
}

/** Threefry 2×32 with 20 rounds (Salmon, Moraes, Dror & Shaw 2011, "Parallel random numbers: as easy as 1, 2, 3"). */
export function threefry(key0: number, key1: number, counter0: number, counter1: number, out: Uint32Array): void {
  const key2 = 0x1bd11bda ^ key0 ^ key1;
  let x = (counter0 + key0) | 0;
  let y = (counter1 + key1) | 0;
  for (let group = 1; group <= 5; group++) {
    const odd = group % 2 === 1;
    x = (x + y) | 0;
    y = odd ? x ^ ((y << 13) | (y >>> 19)) : x ^ ((y << 17) | (y >>> 15));
    x = (x + y) | 0;
    y = odd ? x ^ ((y << 15) | (y >>> 17)) : x ^ ((y << 29) | (y >>> 3));
    x = (x + y) | 0;
    y = odd ? x ^ ((y << 26) | (y >>> 6)) : x ^ ((y << 16) | (y >>> 16));
    x = (x + y) | 0;
    y = odd ? x ^ ((y << 6) | (y >>> 26)) : x ^ ((y << 24) | (y >>> 8));
    const turn = group % 3;
    x = (x + (turn === 0 ? key0 : turn === 1 ? key1 : key2)) | 0;
    y = (y + (turn === 0 ? key1 : turn === 1 ? key2 : key0) + group) | 0;
  }
  out[0] = x;
  out[1] = y;
}

/** The value below which a share `p` (0 to 1, both excluded) of a standard normal lies: AS 241, PPND16 (Wichura 1988). */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(CENTRE, 0.180625 - q * q);
  const r = Math.sqrt(-naturalLog(q < 0 ? p : 1 - p));
  const value = r <= 5 ? ratio(SHOULDER, r - 1.6) : ratio(TAIL, r - 5);
  return q < 0 ? -value : value;
}

// Coefficients of AS 241 from the highest power down: numerator, then denominator.
const CENTRE = Float64Array.of(
  2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987,
  13731.69376550946, 1971.5909503065513, 133.14166789178438, 3.3871328727963665,
  5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597,
  5394.196021424751, 687.1870074920579, 42.31333070160091, 1,
);
const SHOULDER = Float64Array.of(
  0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684,
  3.6478483247632045, 5.769497221460691, 4.630337846156546, 1.4234371107496835,
  1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008,
  0.6897673349851, 1.6763848301838038, 2.053191626637759, 1,
);
const TAIL = Float64Array.of(
  2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
  0.29656057182850487, 1.7848265399172913, 5.463784911164114, 6.657904643501103,
  2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133,
  0.014875361290850615, 0.1369298809227358, 0.599832206555888, 1,
);

function ratio(coefficients: Float64Array, x: number): number {
  let above = coefficients[0]!;
  let below = coefficients[8]!;
  for (let i = 1; i < 8; i++) {
    above = above * x + coefficients[i]!;
    below = below * x + coefficients[8 + i]!;
  }
  return above / below;
}
