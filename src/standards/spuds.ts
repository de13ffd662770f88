/** Studs and pins that stands, arms and focus stations stand on. */
export interface Spud {
  readonly name: string;
  readonly also: readonly string[];
  readonly diameterMm: number;
  readonly says: string;
  readonly source: string;
}

export const SPUDS: readonly Spud[] = [
  {
    name: '16 mm stud', also: ['5/8', '5/8 in', '5/8"', 'baby pin'], diameterMm: 16, says: 'light stands, monitors, focus stations',
    source: 'common practice; 5/8 in is 15.9 mm',
  },
  {
    name: 'junior pin', also: ['28 mm pin', '1 1/8', '1 1/8 in', '1-1/8"'], diameterMm: 28.6, says: 'heavy stands',
    source: 'common practice; 1 1/8 in',
  },
];

export function spud(name: string): Spud | undefined {
  const wanted = name.toLowerCase().trim();
  return SPUDS.find((one) => [one.name, ...one.also].some((known) => known.toLowerCase() === wanted));
}
