import { expect, test } from 'vitest';
import type { Shoot } from '../schema/shoot.ts';
import { Ledger } from './Ledger.ts';

/** The ledger reads any plain data; these tests need no whole shoot. */
const ledgerOf = (data: object) => new Ledger(data as Shoot);

test('a cell runs once, and again only after what it read has changed', () => {
  const ledger = ledgerOf({ a: 1, b: 2, far: { c: 3 } });
  let runs = 0;
  const sum = () => ledger.cell('sum', () => ((runs += 1), (ledger.at('a') as number) + (ledger.at('b') as number)));
  expect([sum(), sum(), runs]).toEqual([3, 3, 1]);
  expect(ledger.update({ a: 1, b: 2, far: { c: 4 } } as unknown as Shoot)).toEqual([]);
  expect([sum(), runs]).toEqual([3, 1]);
  expect(ledger.update({ a: 5, b: 2, far: { c: 4 } } as unknown as Shoot)).toEqual(['sum']);
  expect([sum(), runs]).toEqual([7, 2]);
});

test('a change reaches through cells that use other cells, and the log names the reads behind both', () => {
  const ledger = ledgerOf({ a: 1, b: 10 });
  const inner = () => ledger.cell('inner', () => ledger.at('a') as number);
  const outer = () => ledger.cell('outer', () => inner() + (ledger.at('b') as number));
  expect(outer()).toBe(11);
  expect(ledger.readsOf('outer').toSorted()).toEqual(['a', 'b']);
  expect(ledger.update({ a: 2, b: 10 } as unknown as Shoot).toSorted()).toEqual(['inner', 'outer']);
  expect(outer()).toBe(12);
});

test('a read of keys minds only which keys there are', () => {
  const ledger = ledgerOf({ parts: { x: { mass: 1 } } });
  const names = () => ledger.cell('names', () => ledger.keys('parts'));
  expect(names()).toEqual(['x']);
  expect(ledger.update({ parts: { x: { mass: 2 } } } as unknown as Shoot)).toEqual([]);
  expect(ledger.update({ parts: { x: { mass: 2 }, y: {} } } as unknown as Shoot)).toEqual(['names']);
  expect(names()).toEqual(['x', 'y']);
  expect(ledger.keys('nothing/here')).toEqual([]);
});

test('reads that a branch no longer makes no longer count', () => {
  const ledger = ledgerOf({ which: 'a', a: 1, b: 2 });
  const value = () => ledger.cell('value', () => ledger.at(ledger.at('which') as string));
  value();
  ledger.update({ which: 'b', a: 1, b: 2 } as unknown as Shoot);
  expect(value()).toBe(2);
  expect(ledger.update({ which: 'b', a: 9, b: 2 } as unknown as Shoot)).toEqual([]);
  expect(ledger.readsOf('value')).toEqual(['which', 'b']);
});

test('a cell that is used no longer passes nothing on, however often its users have run', () => {
  const ledger = ledgerOf({ which: 'a', a: 1, b: 2, own: 0 });
  const inner = (key: string) => ledger.cell(key, () => ledger.at(key) as number);
  const outer = (at: number) => ledger.cell(`outer ${at}`, () => inner(ledger.at('which') as string) + (ledger.at('own') as number));
  const all = Array.from({ length: 100 }, (_, at) => at);
  for (let own = 1; own <= 5; own += 1) {
    all.forEach(outer);
    ledger.update({ which: 'a', a: 1, b: 2, own } as unknown as Shoot);
  }
  expect(all.map(outer)).toEqual(all.map(() => 6));
  expect(ledger.update({ which: 'a', a: 3, b: 2, own: 5 } as unknown as Shoot)).toHaveLength(101);
  all.forEach(outer);
  ledger.update({ which: 'b', a: 3, b: 2, own: 5 } as unknown as Shoot);
  expect(all.map(outer)).toEqual(all.map(() => 7));
  expect(ledger.update({ which: 'b', a: 4, b: 2, own: 5 } as unknown as Shoot)).toEqual(['a']);
});

test('what a cell throws is kept like a value, and tried again after a change', () => {
  const ledger = ledgerOf({ a: 0 });
  const risky = () => ledger.cell('risky', () => {
    if (ledger.at('a') === 0) throw new RangeError('no');
    return 'yes';
  });
  expect(risky).toThrow(RangeError);
  expect(ledger.isFresh('risky')).toBe(true);
  ledger.update({ a: 1 } as unknown as Shoot);
  expect(risky()).toBe('yes');
});

test('a computation that asks for its own result is told so', () => {
  const ledger = ledgerOf({});
  const circle = (): unknown => ledger.cell('circle', circle);
  expect(circle).toThrow(/asks for its own result/);
});
