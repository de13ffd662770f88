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

test('rows are counted as the editor counts lines: past empty ones and cells of several lines', () => {
  const faulty = '\n\nname,kind,massG,note\n\nA,rod,95,"Two\nlines"\n\nBent,rodd,95\r\n,,\nC,rod,-1\n';
  expect(importKitCsv(faulty).faults).toMatchObject([{ row: 8, column: 'kind' }, { row: 10, column: 'massG' }]);
});

test('an id that cannot be one, or that only JavaScript knows, loses no other row', () => {
  const { parts, faults } = importKitCsv('id,name,kind,typical\na b,One,rod,\n__proto__,Two,rod,\nconstructor,Three,rod,\nfour,Four,rod,constructor\nfive,Five,rod,\nfive,Six,rod,\n');
  expect(Object.keys(parts)).toEqual(['five']);
  expect(faults).toMatchObject([{ row: 2, column: 'id' }, { row: 3, column: 'id' }, { row: 4, column: 'id' }, { row: 5, column: 'typical', message: 'There is no typical class "constructor".' }, { row: 7, column: 'id' }]);
});

test('a decimal comma that breaks its row in two, and a mass beyond reason, are told and not taken in', () => {
  const { parts, faults } = importKitCsv('name,kind,massG\nA,rod,1,5\nB,rod,9999999\nC,rod,5,,\n');
  expect(Object.keys(parts)).toEqual(['c']);
  expect(faults).toMatchObject([{ row: 2, cure: expect.stringContaining('double quotes') as string }, { row: 3, column: 'massG', cure: expect.stringContaining('check the unit') as string }]);
});

test('a column that stands twice is taken once; a table without names is told once', () => {
  expect(importKitCsv('name,kind,name\nA,rod,B\n')).toMatchObject({ parts: { a: { name: 'A' } }, faults: [{ row: 1, message: expect.stringContaining('the first was taken') as string }] });
  expect(importKitCsv('nam,kind\nA,rod\nB,rod\n').faults.map(({ row }) => row)).toEqual([1, 1]);
  expect(importKitCsv('name,kind\n').faults).toMatchObject([{ message: 'There is no row below the header.' }]);
  expect(importKitCsv('{"format": "setworthy kit"}').faults).toMatchObject([{ message: 'This is JSON, not a table.' }]);
});

test('names of other scripts keep their letters; ten thousand of one name are quick', () => {
  expect(Object.keys(importKitCsv('name,kind\n日本語レンズ,lens\nЙод,rod\nPlåt,plate\n').parts)).toEqual(['日本語レンズ', 'иод', 'plat']);
  const started = performance.now();
  expect(Object.keys(importKitCsv(`name,kind\n${'Rod,rod\n'.repeat(10_000)}`).parts)).toHaveLength(10_000);
  expect(performance.now() - started).toBeLessThan(5000);
});
