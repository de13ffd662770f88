/** Friction between faces that are pressed together. Clean dry metal has no dependable value: these are bands. */
export interface FrictionBand {
  readonly name: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

export const FRICTION_BANDS: readonly FrictionBand[] = [
  {
    name: 'machined metal', value: 0.15, low: 0.1, high: 0.25,
    source: 'common practice: fingers leave grease; aluminium pairs scatter, no dependable value is published',
  },
  { name: 'rough metal', value: 0.25, low: 0.2, high: 0.35, source: 'EN 1090-2: slip factor 0.2 of faces as rolled' },
  { name: 'blasted metal', value: 0.45, low: 0.4, high: 0.5, source: 'EN 1090-2: slip factor 0.5 of blasted faces, clean' },
  { name: 'anodised aluminium', value: 0.15, low: 0.1, high: 0.25, source: 'estimate' },
  { name: 'rubber or cork on metal', value: 0.5, low: 0.3, high: 0.8, source: 'estimate; soft: grips, but lets the joint nod' },
  { name: 'rod in a clamp', value: 0.15, low: 0.08, high: 0.25, source: 'estimate: polished or anodised rods slip early' },
];

export function frictionBand(name: string): FrictionBand | undefined {
  return FRICTION_BANDS.find((one) => one.name === name.toLowerCase().trim());
}
