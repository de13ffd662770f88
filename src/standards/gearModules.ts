/** Tooth sizes of small gears: pitch diameter over teeth, in mm. Gears mesh only within one size. */
export interface GearModule {
  readonly moduleMm: number;
  readonly name: string;
  readonly says: string;
  readonly source: string;
}

export const GEAR_MODULES: readonly GearModule[] = [
  { moduleMm: 0.8, name: '0.8', says: 'focus, iris and zoom gears of cinema lenses', source: 'DIN 780 (not in ISO 54); use: common practice' },
  { moduleMm: 0.4, name: '0.4', says: 'lenses of broadcast and small motors', source: 'DIN 780; use: common practice' },
  { moduleMm: 0.5, name: '0.5', says: 'lenses of broadcast and small motors', source: 'DIN 780; use: common practice' },
  { moduleMm: 0.6, name: '0.6', says: 'lenses of broadcast', source: 'DIN 780; use: common practice' },
  { moduleMm: 1, name: '1', says: 'geared heads, machinery', source: 'ISO 54, first series' },
  {
    moduleMm: 25.4 / 32, name: '32 pitch', says: 'inch gears of old lenses: 0.794 mm, nearly 0.8', source: 'diametral pitch 32 an inch, as in ISO 54',
  },
  { moduleMm: 25.4 / 48, name: '48 pitch', says: 'inch gears, small', source: 'diametral pitch 48 an inch' },
];

/** The basic rack that lens gears share. */
export const BASIC_RACK = { pressureAngleDeg: 20, addendumModules: 1, dedendumModules: 1.25, source: 'ISO 53' } as const;

/** Below this difference teeth of two sizes still run together, with some noise and wear: 0.8 and 32 pitch differ by 0.8 %. */
const NEARLY = 0.01;

/** Whether gears of two modules mesh. */
export function mesh(oneMm: number, otherMm: number): 'mesh' | 'nearly' | 'do not mesh' {
  const difference = Math.abs(oneMm - otherMm) / Math.max(oneMm, otherMm);
  if (difference < 1e-3) return 'mesh';
  return difference < NEARLY ? 'nearly' : 'do not mesh';
}
