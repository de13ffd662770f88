import type { Unit } from './Unit.ts';

const BY_ENDING: readonly (readonly [string, Unit])[] = [
  ['CdPerM2', 'cd/m²'], ['NmPerRad', 'N·m/rad'], ['NPerMm', 'N/mm'], ['Arcmin', 'arcmin'], ['Teeth', 'teeth'], ['Frames', 'frames'], ['Gbps', 'Gb/s'], ['Mps', 'm/s'],
  ['MHz', 'MHz'], ['GPa', 'GPa'], ['Rpm', 'rpm'], ['Lux', 'lx'], ['Dbm', 'dBm'], ['Dbi', 'dBi'], ['Deg', 'deg'], ['Dpt', 'dpt'], ['Ohm', 'ohm'], ['Hz', 'Hz'], ['Db', 'dB'],
  ['Min', 'min'], ['Mm2', 'mm²'], ['Mm', 'mm'], ['Ms', 'ms'], ['Nm', 'N·m'], ['Px', 'px'], ['Ah', 'Ah'], ['Wh', 'Wh'], ['Hours', 'h'], ['M', 'm'], ['S', 's'], ['V', 'V'],
  ['A', 'A'], ['W', 'W'], ['C', '°C'], ['G', 'g'], ['N', 'N'],
];

/** Counted things whose key is the thing itself: never in doubt. */
const COUNTED: Readonly<Record<string, Unit>> = { teeth: 'teeth', steps: 'count', count: 'count' };

/** Units of keys that were asked for: the same few hundred come again and again. */
const KNOWN = new Map<string, Unit>();
const MOST_KNOWN = 2000;

/** The unit a key carries in its name: `ringTorqueNm` is in N·m. Keys without an ending are ratios and counts. */
export function unitOfKey(key: string): Unit {
  const known = KNOWN.get(key);
  if (known !== undefined) return known;
  const unit = COUNTED[key] ?? endingOf(key)?.[1] ?? 'ratio';
  if (KNOWN.size < MOST_KNOWN) KNOWN.set(key, unit);
  return unit;
}

const endingOf = (key: string) => BY_ENDING.find(([ending]) => key.endsWith(ending) && /[a-z0-9]/.test(key.at(-ending.length - 1) ?? ''));
