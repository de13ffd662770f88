/** Classes of 75 ohm coaxial cable by thickness, with the loss of a typical one. A cable's own data come first. */
export interface CoaxClass {
  readonly name: 'extra thin' | 'thin' | 'standard' | 'low-loss';
  readonly says: string;
  readonly loss: readonly { readonly atMHz: number; readonly dbPer100m: number }[];
  /** How far a cable of the class may differ, as a share. */
  readonly within: number;
  /** What bending it tightly costs; a radius below this kinks the dielectric. */
  readonly leastBendMm: number;
  readonly source: string;
}

export const COAX_CLASSES: readonly CoaxClass[] = [
  {
    name: 'extra thin', says: 'about 2.5 mm, for gimbals and inside rigs (RG-179 class)', within: 0.3, leastBendMm: 12,
    loss: [{ atMHz: 742.5, dbPer100m: 55 }, { atMHz: 1485, dbPer100m: 79 }, { atMHz: 2970, dbPer100m: 114 }],
    source: 'from memory, estimate; bend: common practice, five diameters',
  },
  {
    name: 'thin', says: 'about 4 mm, the usual short lead on a camera', within: 0.2, leastBendMm: 20,
    loss: [{ atMHz: 742.5, dbPer100m: 28 }, { atMHz: 1485, dbPer100m: 40.5 }, { atMHz: 2970, dbPer100m: 58 }],
    source: 'from memory, estimate; bend: common practice, five diameters',
  },
  {
    name: 'standard', says: 'about 6 mm, foam dielectric (RG-59 class)', within: 0.2, leastBendMm: 30,
    loss: [{ atMHz: 742.5, dbPer100m: 21.5 }, { atMHz: 1485, dbPer100m: 31 }, { atMHz: 2970, dbPer100m: 45 }],
    source: 'from memory, estimate; bend: common practice, five diameters',
  },
  {
    name: 'low-loss', says: 'about 7 mm, gas-foamed dielectric (RG-6 class)', within: 0.1, leastBendMm: 35,
    loss: [{ atMHz: 742.5, dbPer100m: 17.7 }, { atMHz: 1485, dbPer100m: 25.64 }],
    source: 'a published cable of the class; bend: common practice, five diameters',
  },
];

export function coaxClass(name: string): CoaxClass | undefined {
  return COAX_CLASSES.find((one) => one.name === name);
}
