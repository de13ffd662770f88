import type { Fault } from '../faults/Fault.ts';
import { printNumber } from '../units/print.ts';
import type { Unit } from '../units/Unit.ts';
import { unitOfKey } from '../units/unitOfKey.ts';

/** Beyond these a figure is a slip of the keyboard or of the unit, whatever it describes. */
const LARGEST: Partial<Record<Unit, number>> = {
  mm: 1e7, m: 1e5, g: 1e6, V: 1000, A: 1000, W: 50_000, Ah: 10_000, 'N·m': 1000, Hz: 20_000, ms: 600_000, s: 1e6, h: 48, lx: 200_000, 'cd/m²': 20_000, dpt: 100, rpm: 100_000,
  deg: 100_000, MHz: 1e6, 'm/s': 150, px: 100_000, teeth: 10_000, min: 10_000, dB: 1000, dBm: 200, dBi: 100,
};

/** The same for counts and ratios, whose keys carry no unit, and for what is known more closely than its unit tells: least and most. */
const BELIEVED: ReadonlyMap<string, readonly [number, number]> = new Map([
  ['count', [0, 10_000]], ['takes', [1, 1000]], ['packs', [1, 100]], ['bays', [1, 1000]], ['screws', [1, 100]], ['maxReceivers', [1, 1000]], ['bodies', [0, 1000]], ['walls', [0, 1000]],
  ['squeeze', [0.2, 5]], ['zoom', [1, 100]], ['tStop', [0.5, 256]], ['fNumber', [0.5, 256]], ['frameRateHz', [0.01, 20_000]], ['sensorWidthMm', [0.5, 500]], ['sensorHeightMm', [0.5, 500]], ['imageCircleMm', [0.5, 1000]],
  // Where a point is on its part, in mm: a hundred metres.
  ['at', [-100_000, 100_000]],
  ['focalLengthMm', [1, 10_000]], ['diagonalMm', [10, 20_000]], ['flangeMm', [1, 500]],
]);

const ANY = [-Infinity, Infinity] as const;

/** Figures that cannot be meant: beyond reason for their unit, below absolute sense, or with bounds that cross. */
export function absurdities(data: unknown): Fault[] {
  const faults: Fault[] = [];
  walk(data, '', undefined, faults);
  return faults;
}

/** The way to a value from the top; made into a path only where there is something to say. */
interface Way {
  readonly to: string;
  readonly from: Way | undefined;
}

const pathOf = (way: Way | undefined): string => (way === undefined ? '' : way.from === undefined ? way.to : `${pathOf(way.from)}/${way.to}`);

function walk(value: unknown, key: string, way: Way | undefined, faults: Fault[]): void {
  if (typeof value === 'number') {
    const fault = absurd(value, key);
    if (fault !== undefined) faults.push({ path: pathOf(way), ...fault });
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  const isFigure = typeof (value as { value?: unknown }).value === 'number';
  if (isFigure) faults.push(...crossedBounds(value as StatedBounds, way));
  for (const [inner, entry] of Object.entries(value)) {
    // How far a figure may be out is no figure of its kind: it may be nothing.
    if (isFigure && inner === 'plusMinus') continue;
    const innerKey = Array.isArray(value) || (isFigure && inner !== 'note') ? key : inner;
    walk(entry, innerKey, { to: inner, from: way }, faults);
  }
}

function absurd(value: number, key: string): Omit<Fault, 'path'> | undefined {
  const name = key.slice(key.lastIndexOf('/') + 1);
  const unit = unitOfKey(name);
  const largest = LARGEST[unit];
  if (largest !== undefined && Math.abs(value) > largest) {
    return { message: `${printNumber(value)} ${unit} cannot be meant.`, cure: `At most ${printNumber(largest)} ${unit} are believed; check the unit.` };
  }
  const [least, most] = BELIEVED.get(name) ?? ANY;
  if (value < least || value > most) return { message: `${printNumber(value)} cannot be meant.`, cure: `From ${printNumber(least)} to ${printNumber(most)} are believed.` };
  if (unit === '°C' && (value < -90 || value > 90)) return { message: `${value} °C cannot be meant.`, cure: 'Give degrees Celsius from −90 to 90.' };
  return undefined;
}

interface StatedBounds {
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
}

function crossedBounds({ value, low, high }: StatedBounds, way: Way | undefined): Fault[] {
  const outside = (low !== undefined && low > value) || (high !== undefined && high < value);
  return outside ? [{ path: pathOf(way), message: `The bounds ${low ?? '…'} to ${high ?? '…'} do not hold the value ${value}.`, cure: 'Low must not exceed the value, nor the value high.' }] : [];
}
