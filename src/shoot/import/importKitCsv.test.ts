import { expect, test } from 'vitest';
import { importKitCsv } from './importKitCsv.ts';

test('figures, lengths, masses, lists and classes come out as the file holds them', () => {
  const { parts, faults } = importKitCsv(`name,kind,typical,massG,lens/focalLengthMm,focus/closeMm,focus/ringTorqueNm,screen.zooms
"Old 50, stiff",lens,lens-50,2.1 kg,50,2'6",0.31 ± 0.05 measured,
Small screen,monitor,monitor-5,0.6 lb,,,,2;4
`);
  expect(faults).toEqual([]);
  expect(parts['old-50-stiff']).toMatchObject({ name: 'Old 50, stiff', massG: 2100, focus: { closeMm: 762, ringTorqueNm: { value: 0.31, plusMinus: 0.05, basis: 'measured' } }, lens: { mount: 'short 18 mm' } });
  expect(parts['small-screen']?.massG).toBeCloseTo(272.2, 1);
  expect(parts['small-screen']?.screen?.zooms).toEqual([2, 4]);
});

test('semicolons, decimal commas and a byte-order mark are read', () => {
  const { parts, faults } = importKitCsv('\uFEFFname;kind;massG\nStange;rod;95,5\n');
  expect(faults).toEqual([]);
  expect(parts['stange']?.massG).toBe(95.5);
});

test('one bad row loses no other; each fault names row and column and offers a cure', () => {
  const { parts, faults } = importKitCsv('name,kind,massG,bodyy/mount\nA,monitr,100,\nB,rod,heavy,\nC,rod,95,\n,rod,95,\n', ['c']);
  expect(Object.keys(parts)).toEqual(['c-2']);
  expect(faults).toMatchObject([
    { row: 1, column: 'bodyy/mount', cure: 'Did you mean "body/mount"?' },
    { row: 2, column: 'kind', cure: 'Did you mean "monitor"?' },
    { row: 3, column: 'massG', message: expect.stringContaining('heavy') as string },
    { row: 5, column: 'name' },
  ]);
});

test('a broken table is a message, not an exception', () => {
  expect(importKitCsv('name,kind\n"open,rod\n').faults).toHaveLength(1);
  expect(importKitCsv('').faults).toMatchObject([{ message: expect.stringContaining('no column "name"') as string }]);
});
