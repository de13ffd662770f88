/** Stiffness, density and thermal growth of what rigs are made of. A part's own data come first. */
export interface Material {
  readonly name: string;
  readonly also: readonly string[];
  readonly youngGPa: number;
  readonly shearGPa: number;
  readonly densityKgPerM3: number;
  readonly expansionPerMillionK: number;
  /** Share by which its stiffness may be out, either way. */
  readonly within: number;
  readonly source: string;
}

const SHIGLEY = 'Shigley, table A-5';
const SHIGLEY_READ = `${SHIGLEY}; density, expansion from memory`;

export const MATERIALS: readonly Material[] = [
  {
    name: 'steel', also: ['carbon steel'], youngGPa: 207, shearGPa: 79.3,
    densityKgPerM3: 7850, expansionPerMillionK: 11.7, within: 0.03, source: SHIGLEY_READ,
  },
  {
    name: 'stainless steel', also: ['stainless'], youngGPa: 190, shearGPa: 73.1,
    densityKgPerM3: 7900, expansionPerMillionK: 17.3, within: 0.03, source: SHIGLEY_READ,
  },
  {
    name: 'aluminium', also: ['aluminum', 'aluminium alloy'], youngGPa: 71, shearGPa: 26.2,
    densityKgPerM3: 2700, expansionPerMillionK: 23.6, within: 0.03, source: SHIGLEY_READ,
  },
  {
    name: 'magnesium', also: [], youngGPa: 44.8, shearGPa: 16.5, densityKgPerM3: 1800, expansionPerMillionK: 26, within: 0.03,
    source: `${SHIGLEY}, from memory`,
  },
  {
    name: 'titanium', also: ['titanium alloy'], youngGPa: 114, shearGPa: 42.4, densityKgPerM3: 4430, expansionPerMillionK: 8.8, within: 0.04,
    source: `${SHIGLEY}, from memory`,
  },
  {
    name: 'brass', also: [], youngGPa: 106, shearGPa: 40.1, densityKgPerM3: 8500, expansionPerMillionK: 19, within: 0.05,
    source: `${SHIGLEY}, from memory`,
  },
  {
    name: 'carbon tube', also: ['carbon', 'carbon fibre', 'carbon fiber'], youngGPa: 80, shearGPa: 6, densityKgPerM3: 1600, expansionPerMillionK: 1,
    within: 0.5, source: 'estimate: fibres mostly along the tube; the lay-up decides, measure it',
  },
  {
    name: 'ABS', also: [], youngGPa: 2.3, shearGPa: 0.85, densityKgPerM3: 1050, expansionPerMillionK: 73.8, within: 0.2,
    source: 'from memory; printed parts are softer across their layers',
  },
  {
    name: 'PLA', also: [], youngGPa: 3.3, shearGPa: 1.2, densityKgPerM3: 1240, expansionPerMillionK: 68, within: 0.25,
    source: 'from memory; softens in a hot car, near 55 °C',
  },
  { name: 'PETG', also: [], youngGPa: 2.1, shearGPa: 0.75, densityKgPerM3: 1270, expansionPerMillionK: 60, within: 0.25, source: 'from memory' },
  {
    name: 'nylon', also: ['polyamide', 'PA12'], youngGPa: 1.8, shearGPa: 0.65, densityKgPerM3: 1010, expansionPerMillionK: 100, within: 0.4,
    source: 'from memory; damp makes it softer',
  },
  { name: 'acetal', also: ['POM'], youngGPa: 2.9, shearGPa: 1, densityKgPerM3: 1410, expansionPerMillionK: 110, within: 0.15, source: 'from memory' },
  {
    name: 'glass', also: ['optical glass'], youngGPa: 82, shearGPa: 34, densityKgPerM3: 2510, expansionPerMillionK: 7.1, within: 0.3,
    source: 'from memory: a common crown; dense kinds reach 5000 kg/m³',
  },
];

export function material(name: string): Material | undefined {
  const wanted = name.toLowerCase().trim();
  return MATERIALS.find((one) => [one.name, ...one.also].some((known) => known.toLowerCase() === wanted));
}
