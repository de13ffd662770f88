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
