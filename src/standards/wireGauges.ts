/** Copper wires by gauge and by area. The current each is run at on a set is practice: the part's own figure and its fuse count. */
export interface WireGauge {
  readonly awg: number;
  /** Usual current in a short lead in free air, from a careful to a common value. Common practice. */
  readonly practiceA: { readonly low: number; readonly high: number };
}

/** The series of ASTM B258: each step is the 39th root of 92. */
const THINNEST_MM = 0.127; // gauge 36
const RATIO = 92;
const STEPS = 39;

/** Diameter of a solid wire by its gauge, mm (ASTM B258). */
export function awgDiameterMm(awg: number): number {
  return THINNEST_MM * RATIO ** ((36 - awg) / STEPS);
}

export const WIRE_GAUGES: readonly WireGauge[] = [
  { awg: 12, practiceA: { low: 15, high: 25 } },
  { awg: 14, practiceA: { low: 12, high: 18 } },
  { awg: 16, practiceA: { low: 9, high: 13 } },
  { awg: 18, practiceA: { low: 6, high: 10 } },
  { awg: 20, practiceA: { low: 4, high: 7 } },
  { awg: 22, practiceA: { low: 3, high: 5 } },
  { awg: 24, practiceA: { low: 2, high: 3.5 } },
  { awg: 26, practiceA: { low: 1.2, high: 2.2 } },
  { awg: 28, practiceA: { low: 0.8, high: 1.4 } },
  { awg: 30, practiceA: { low: 0.5, high: 0.9 } },
];

export const WIRE_GAUGES_SOURCE = 'Diameters: ASTM B258. Currents: common practice for short leads, estimates';

/** The row of a gauge, if it is in the table. */
export function wireGauge(awg: number): WireGauge | undefined {
  return WIRE_GAUGES.find((row) => row.awg === awg);
}

/** Stranded wire has this much more resistance than solid wire of the same gauge. */
export const STRANDING_SHARE = { value: 0.035, low: 0.02, high: 0.05, source: 'from memory' } as const;

/** Flexible conductors (class 5) are bought by the most resistance they may have at 20 °C. */
export const FLEXIBLE_CONDUCTORS: readonly { readonly areaMm2: number; readonly mostOhmPerKm: number }[] = [
  { areaMm2: 0.5, mostOhmPerKm: 39 },
  { areaMm2: 0.75, mostOhmPerKm: 26 },
  { areaMm2: 1, mostOhmPerKm: 19.5 },
  { areaMm2: 1.5, mostOhmPerKm: 13.3 },
  { areaMm2: 2.5, mostOhmPerKm: 7.98 },
];

export const FLEXIBLE_CONDUCTORS_SOURCE = 'IEC 60228, class 5, plain copper';

/** Share of a fuse that may flow without end. */
export const CONTINUOUS_SHARE_OF_FUSE = { value: 0.8, source: 'common practice' } as const;
