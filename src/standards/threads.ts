/** Screw threads found on cameras, arms and stands. */
export interface Thread {
  readonly name: string;
  /** Other ways it is written. */
  readonly also: readonly string[];
  readonly series: 'inch' | 'metric';
  readonly diameterMm: number;
  readonly pitchMm: number;
  readonly stressAreaMm2: number;
  readonly says: string;
  readonly source: string;
}

const inch = (perInch: number) => 25.4 / perInch;
const ASME = 'ASME B1.1 unified threads; area by its formula';
const ISO = 'ISO 261 coarse series; area ISO 898-1';

export const THREADS: readonly Thread[] = [
  {
    name: '1/4-20', also: ['1/4', '1/4"', '1/4 in', '1/4-20 UNC', '1/4"-20'], series: 'inch', diameterMm: 6.35,
    pitchMm: inch(20), stressAreaMm2: 20.5, says: 'the small camera screw', source: `ISO 1222; ${ASME}`,
  },
  {
    name: '3/8-16', also: ['3/8', '3/8"', '3/8 in', '3/8-16 UNC', '3/8"-16'], series: 'inch', diameterMm: 9.525,
    pitchMm: inch(16), stressAreaMm2: 50, says: 'the large camera screw', source: `ISO 1222; ${ASME}`,
  },
  {
    name: '1/2-13', also: ['1/2', '1/2"', '1/2-13 UNC'], series: 'inch', diameterMm: 12.7, pitchMm: inch(13), stressAreaMm2: 91.5,
    says: 'grip hardware', source: `${ASME}: 0.1419 in²`,
  },
  {
    name: '5/8-27', also: ['5/8-27 UNS'], series: 'inch', diameterMm: 15.875, pitchMm: inch(27), stressAreaMm2: 175.6, says: 'microphone stands',
    source: ASME,
  },
  { name: 'M2', also: [], series: 'metric', diameterMm: 2, pitchMm: 0.4, stressAreaMm2: 2.07, says: 'small covers', source: `${ISO} (from memory)` },
  {
    name: 'M2.5', also: ['M2,5'], series: 'metric', diameterMm: 2.5, pitchMm: 0.45, stressAreaMm2: 3.39, says: 'small plates',
    source: `${ISO} (from memory)`,
  },
  { name: 'M3', also: [], series: 'metric', diameterMm: 3, pitchMm: 0.5, stressAreaMm2: 5.03, says: 'cages, motors', source: ISO },
  {
    name: 'M4', also: [], series: 'metric', diameterMm: 4, pitchMm: 0.7, stressAreaMm2: 8.78, says: 'plates, battery plates, rod clamps', source: ISO,
  },
  { name: 'M5', also: [], series: 'metric', diameterMm: 5, pitchMm: 0.8, stressAreaMm2: 14.2, says: 'clamps, rosettes', source: ISO },
  { name: 'M6', also: [], series: 'metric', diameterMm: 6, pitchMm: 1, stressAreaMm2: 20.1, says: 'rosettes, heads', source: ISO },
  {
    name: 'M8', also: [], series: 'metric', diameterMm: 8, pitchMm: 1.25, stressAreaMm2: 36.6, says: 'heads, stands', source: `${ISO} (from memory)`,
  },
  {
    name: 'M10', also: [], series: 'metric', diameterMm: 10, pitchMm: 1.5, stressAreaMm2: 58, says: 'rod ends, stands',
    source: `${ISO} (from memory)`,
  },
];

/** The thread a name means: `1/4`, `1/4-20 UNC`, `m4`. */
export function thread(name: string): Thread | undefined {
  const wanted = plain(name);
  return THREADS.find((one) => [one.name, ...one.also].some((known) => plain(known) === wanted));
}

const plain = (name: string) => name.toLowerCase().replaceAll(/[\s″”]/g, (mark) => (mark.trim() === '' ? '' : '"'));

/** The camera screw stands out, and its socket takes it in, by these lengths. */
export const CAMERA_SCREW = {
  proudMm: 4.5, socketDepthMm: 5.5,
  says: 'most that the screw stands proud, least depth of the socket: a longer screw presses on the camera, not the plate',
  source: 'ISO 1222, read second-hand',
} as const;
