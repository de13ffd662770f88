import { NoAnswer } from '../calculator.ts';

/** What a pack is, to the sums of discharge: a voltage at rest that falls with its charge, behind a resistance. */
export interface DischargingPack {
  /** State of charge and voltage at rest; straight between the points. See `sortedCurve`. */
  readonly openCircuitV: Curve;
  readonly capacityAh: number;
  readonly internalOhm: number;
  /** Loaded voltage at which it, or what it feeds, shuts off. */
  readonly cutoffV: number;
}

export type Curve = readonly (readonly [soc: number, volts: number])[];

export interface Run {
  readonly hours: number;
  readonly endSoc: number;
}

/** The points from empty to full. They must reach from 0 to 1: what lies beyond is not known. */
export function sortedCurve(points: Curve, path: string): Curve {
  const curve = points.toSorted(([a], [b]) => a - b);
  const twice = curve.find(([soc], i) => soc === curve[i - 1]?.[0]);
  if (twice !== undefined) throw new NoAnswer(path, `Found two voltages at charge ${twice[0]}; one is needed.`);
  const [low, high] = [curve[0]?.[0] ?? Number.NaN, curve.at(-1)?.[0] ?? Number.NaN];
  if (low !== 0 || high !== 1) throw new NoAnswer(path, `Found voltages from charge ${low} to ${high}; they must reach from 0 to 1.`);
  return curve;
}

/** How long a pack feeds a constant power, and where that ends: at cut-off under load, where the load cannot be fed, or empty. */
export function runFrom(pack: DischargingPack, { soc, loadW }: { soc: number; loadW: number }): Run {
  return drain(pack, { soc, loadW, hours: Infinity });
}

/**
 * Feeds a constant power for a time, or until it ends: how long it fed, and the state of charge then. Goes down the straight
 * stretches of the curve one by one.
 */
export function drain(pack: DischargingPack, { soc, loadW, hours }: { soc: number; loadW: number; hours: number }): Run {
  if (loadW === 0) return { hours, endSoc: soc };
  const endV = endVoltage(pack, loadW);
  const curve = pack.openCircuitV;
  let high: Point = { soc, volts: voltsAt(curve, soc) };
  let fed = 0;
  for (let i = curve.length - 1; i >= 0 && high.volts >= endV; i -= 1) {
    const [nextSoc, nextV] = curve[i] ?? [0, 0];
    if (nextSoc >= high.soc) continue;
    const low = nextV < endV ? crossing(high, { soc: nextSoc, volts: nextV }, endV) : { soc: nextSoc, volts: nextV };
    const stretchHours = hoursBetween(high, low, { pack, loadW });
    const left = hours - fed;
    if (left < stretchHours) return { hours, endSoc: socWithin({ high, low, hours: stretchHours }, { pack, loadW, hours: left }) };
    fed += stretchHours;
    high = low;
    if (nextV < endV) break;
  }
  return { hours: fed, endSoc: high.soc };
}

interface Point {
  readonly soc: number;
  readonly volts: number;
}

interface Stretch {
  readonly high: Point;
  readonly low: Point;
  readonly hours: number;
}

function crossing(high: Point, next: Point, volts: number): Point {
  return { soc: next.soc + ((high.soc - next.soc) * (volts - next.volts)) / (high.volts - next.volts), volts };
}

/**
 * Voltage at rest below which the load cannot go on: where the loaded voltage is at cut-off, Vc + P·R/Vc; or, where cut-off lies
 * on the lower root that no supply holds, where the upper one vanishes, 2·√(P·R).
 */
function endVoltage({ internalOhm, cutoffV }: DischargingPack, loadW: number): number {
  const vanishing = Math.sqrt(loadW * internalOhm);
  return cutoffV > vanishing ? cutoffV + (loadW * internalOhm) / cutoffV : 2 * vanishing;
}

function voltsAt(curve: Curve, soc: number): number {
  const above = curve.findIndex((point) => point[0] >= soc);
  const [highSoc, highV] = curve[above] ?? curve.at(-1) ?? [1, 0];
  const [lowSoc, lowV] = curve[above - 1] ?? [highSoc, highV];
  return highSoc === lowSoc ? highV : lowV + ((highV - lowV) * (soc - lowSoc)) / (highSoc - lowSoc);
}

interface Load {
  readonly pack: DischargingPack;
  readonly loadW: number;
}

/** Charge over current, the current of constant power from a voltage that falls in a straight line: in closed form. */
function hoursBetween(high: Point, low: Point, { pack, loadW }: Load): number {
  const drawnAh = pack.capacityAh * (high.soc - low.soc);
  const fall = high.volts - low.volts;
  const limit = 4 * loadW * pack.internalOhm;
  // Below a millionth the closed form loses digits, and the middle is exact enough.
  if (Math.abs(fall) < 1e-6 * high.volts) return drawnAh * perAmp((high.volts + low.volts) / 2, { loadW, limit });
  return (drawnAh * (perAmpIntegral(high.volts, { loadW, limit }) - perAmpIntegral(low.volts, { loadW, limit }))) / fall;
}

/** 1/I = (V + √(V² − 4PR))/(2P), at a voltage at rest V. */
function perAmp(volts: number, { loadW, limit }: { loadW: number; limit: number }): number {
  return (volts + Math.sqrt(Math.max(0, volts * volts - limit))) / (2 * loadW);
}

/** Its integral over V: (V² + V·w − 4PR·ln(V + w))/(4P), w = √(V² − 4PR). */
function perAmpIntegral(volts: number, { loadW, limit }: { loadW: number; limit: number }): number {
  const root = Math.sqrt(Math.max(0, volts * volts - limit));
  return (volts * volts + volts * root - (limit === 0 ? 0 : limit * Math.log(volts + root))) / (4 * loadW);
}

/** Where within a stretch a time has passed: Newton's steps, kept between the ends. */
function socWithin({ high, low, hours: whole }: Stretch, { pack, loadW, hours }: Load & { hours: number }): number {
  if (whole <= 0) return high.soc;
  const limit = 4 * loadW * pack.internalOhm;
  let from = low.soc;
  let to = high.soc;
  let soc = high.soc - ((high.soc - low.soc) * hours) / whole;
  for (let step = 0; step < 60; step += 1) {
    const volts = low.volts + ((high.volts - low.volts) * (soc - low.soc)) / (high.soc - low.soc);
    const passed = hoursBetween(high, { soc, volts }, { pack, loadW });
    if (passed > hours) from = soc;
    else to = soc;
    const next = soc + (passed - hours) / (pack.capacityAh * perAmp(volts, { loadW, limit }));
    const inside = next > from && next < to ? next : (from + to) / 2;
    if (Math.abs(inside - soc) < 1e-14) return inside;
    soc = inside;
  }
  return soc;
}
