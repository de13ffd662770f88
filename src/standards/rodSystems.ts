/** Pairs of rods under a camera: what their clamps must agree in. Common practice; trade pages agree. */
export interface RodSystem {
  readonly name: '15 mm lightweight' | '15 mm studio' | '19 mm studio';
  readonly rodDiameterMm: number;
  /** Between the centres of the two rods. */
  readonly spacingMm: number;
  /** Optical axis above the centres of the rods. */
  readonly axisAboveMm: number;
  readonly source: string;
}

const TRADE = 'common practice: trade pages agree';

export const ROD_SYSTEMS: readonly RodSystem[] = [
  { name: '15 mm lightweight', rodDiameterMm: 15, spacingMm: 60, axisAboveMm: 85, source: TRADE },
  { name: '15 mm studio', rodDiameterMm: 15, spacingMm: 100, axisAboveMm: 118, source: TRADE },
  { name: '19 mm studio', rodDiameterMm: 19, spacingMm: 104, axisAboveMm: 120, source: TRADE },
];

export function rodSystem(name: string): RodSystem | undefined {
  return ROD_SYSTEMS.find((one) => one.name === name.toLowerCase().trim());
}
