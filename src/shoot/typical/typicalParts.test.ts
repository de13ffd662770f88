import { expect, test } from 'vitest';
import { part } from '../schema/part.ts';
import { typicalPart, typicalParts } from './typicalParts.ts';

const ids = Object.keys(typicalParts);

test('there are enough classes for a first answer', () => expect(ids.length).toBeGreaterThanOrEqual(80));

test.each(ids)('%s is a part by the schema, weighs something, and is marked typical', (id) => {
  const made = typicalPart(id);
  expect(part.safeParse(made).error).toBeUndefined();
  expect(made).toMatchObject({ basis: 'typical', typical: id });
  expect(made?.massG).toBeGreaterThan(0);
});

test('figures are written as a person would write them', () => {
  const long = [...JSON.stringify(typicalParts).matchAll(/\d+\.\d{4,}/g)].map(([found]) => found);
  expect(long).toEqual([]);
});

test('no cable shows a live pin: outlets and the ends that meet them pair female with male (standards/connectors)', () => {
  const powers = Object.entries(typicalParts).flatMap(([id, { ports = {} }]) => Object.values(ports).filter(({ kind, connector }) => kind === 'power' && connector === '2-pin tap').map(({ way, sex }) => `${id} ${way} ${sex ?? ''}`));
  expect(powers.filter((one) => / out male$| in female$/.test(one))).toEqual([]);
  const ends = Object.values(typicalParts).filter(({ cable }) => cable?.ends.some(({ connector }) => connector === '2-pin tap')).map(({ cable }) => cable?.ends.map(({ sex }) => sex));
  expect(ends.length).toBeGreaterThan(0);
  expect(ends.filter((one) => one?.filter((sex) => sex === 'female').length === 0)).toEqual([]);
});
