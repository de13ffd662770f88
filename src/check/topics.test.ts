import { expect, test } from 'vitest';
import { jsonSchemaOf } from '../shoot/jsonSchema.ts';
import { topics } from './topics.ts';

test.each(topics)('$id: every key says what it means', ({ keys }) => {
  expect(keys.length).toBeGreaterThan(2);
  for (const { key, says } of keys) expect(says, key).not.toBe('');
});

test('the published schema says the same of each key of points, joints and settings', () => {
  const published = JSON.stringify(jsonSchemaOf('shoot'));
  for (const { keys } of topics) for (const { says } of keys) expect(published).toContain(JSON.stringify(says));
  expect(published).not.toContain('"explains"');
});
