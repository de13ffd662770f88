import { describe, expect, test } from 'vitest';
import { ACCESSORY_SHOE } from './accessoryShoe.ts';
import { mechanics } from './assumptions/mechanics.ts';
import { FRICTION_BANDS, frictionBand } from './frictionBands.ts';
import { FRONT_DIAMETERS_MM, nominalFrontMm } from './fronts.ts';
import { BASIC_RACK, GEAR_MODULES, mesh } from './gearModules.ts';
import { GROUNDS, JOINT_TYPES, jointType } from './jointTypes.ts';
import { COUPLING_MULTIPLIERS, FREQUENCY_MULTIPLIERS, LIFTS_PER_MIN } from './liftingTables.ts';
import { MATERIALS, material } from './materials.ts';
import { NUT_FACTORS, nutFactor } from './nutFactors.ts';
import { OVERHEAD_FACTS, OVERHEAD_RULES } from './overheadRules.ts';
import { PLATE_CLASSES, plateClass } from './plateClasses.ts';
import { ROD_SYSTEMS, rodSystem } from './rodSystems.ts';
import { SCREW_CLASSES, UNKNOWN_CLASS, screwClass } from './screwClasses.ts';
import { SPUDS, spud } from './spuds.ts';
import { CAMERA_SCREW, THREADS, thread } from './threads.ts';

test('every row names its source', () => {
  const rows = [
    THREADS, SCREW_CLASSES, MATERIALS, ROD_SYSTEMS, SPUDS, PLATE_CLASSES, NUT_FACTORS, FRICTION_BANDS, GEAR_MODULES, OVERHEAD_RULES, JOINT_TYPES,
    GROUNDS,
    Object.values(mechanics), [ACCESSORY_SHOE, CAMERA_SCREW, BASIC_RACK, OVERHEAD_FACTS],
  ];
  for (const { source } of rows.flat()) expect(source.length).toBeGreaterThan(5);
});

test('bands lie between their own bounds', () => {
  for (const { value, low, high } of [...NUT_FACTORS, ...FRICTION_BANDS, ...Object.values(mechanics)]) {
    expect(low).toBeLessThanOrEqual(value);
    expect(value).toBeLessThanOrEqual(high);
  }
});

describe('threads', () => {
  const written = [['1/4', '1/4-20'], ['1/4"-20', '1/4-20'], ['1/4-20 UNC', '1/4-20'], ['3/8 in', '3/8-16'], ['m4', 'M4'], ['M2,5', 'M2.5']];
  test.each(written)('%s means %s', (name, meant) => {
    expect(thread(name)?.name).toBe(meant);
  });
  test('none is made up', () => expect(thread('7/16')).toBeUndefined());
  test('pitch and diameter as printed: 1.270, 6.350; 1.5875, 9.525 (ISO 1222, JIS B 7103)', () => {
    expect(thread('1/4')).toMatchObject({ pitchMm: 1.27, diameterMm: 6.35 });
    expect(thread('3/8')).toMatchObject({ pitchMm: 1.5875, diameterMm: 9.525 });
  });
  test('a socket takes the whole screw', () => expect(CAMERA_SCREW.socketDepthMm).toBeGreaterThan(CAMERA_SCREW.proudMm));
});

test('rods as the trade has them: 15 at 60 and 85, 15 at 100 and 118, 19 at 104 and 120 mm (common practice)', () => {
  const sizes = ROD_SYSTEMS.map(({ rodDiameterMm, spacingMm, axisAboveMm }) => [rodDiameterMm, spacingMm, axisAboveMm]);
  expect(sizes).toEqual([[15, 60, 85], [15, 100, 118], [19, 104, 120]]);
  expect(rodSystem('15 mm Studio')?.spacingMm).toBe(100);
});

test('fronts are found by their size, a little under it too', () => {
  expect(FRONT_DIAMETERS_MM).toEqual([80, 95, 110, 114, 134]);
  expect(nominalFrontMm(94.8)).toBe(95);
  expect(nominalFrontMm(97)).toBeUndefined();
});

test('gears of 32 an inch nearly mesh with 0.8; 0.6 does not (practice)', () => {
  expect(mesh(0.8, 25.4 / 32)).toBe('nearly');
  expect(mesh(0.8, 0.8)).toBe('mesh');
  expect(mesh(0.8, 0.6)).toBe('do not mesh');
});

test('names are found as people write them', () => {
  expect(material('Aluminum')?.youngGPa).toBe(71);
  expect(plateClass('NATO rail')?.name).toBe('accessory rail');
  expect(spud('5/8 in')?.diameterMm).toBe(16);
  expect(nutFactor('zinc plated')?.value).toBe(0.2);
  expect(frictionBand('machined metal')?.value).toBe(0.15);
  expect(screwClass(UNKNOWN_CLASS)?.proofMPa).toBe(450);
});

test('a single screw turns by friction and a pinned one does not; nothing is stiffer than it can be held', () => {
  expect(jointType('one screw')?.heldBy.zNmPerRad).toBe('friction');
  expect(jointType('screw with pins')?.heldBy.zNmPerRad).toBe('shape');
  expect(jointType('two screws')?.heldBy.zNmPerRad).toBe('shape');
  for (const { within } of [...JOINT_TYPES, ...GROUNDS]) expect(within.low).toBeLessThan(within.high);
});

test('the lifting tables never rise with the rate, nor with the hours', () => {
  FREQUENCY_MULTIPLIERS.forEach(({ multipliers }, table) => {
    expect(multipliers).toHaveLength(LIFTS_PER_MIN.length);
    multipliers.forEach((value, row) => {
      expect(value).toBeLessThanOrEqual(multipliers[row - 1] ?? 1);
      expect(value).toBeLessThanOrEqual(FREQUENCY_MULTIPLIERS[table - 1]?.multipliers[row] ?? 1);
    });
  });
  expect(Object.values(COUPLING_MULTIPLIERS).every(({ high, low }) => low <= high)).toBe(true);
});
