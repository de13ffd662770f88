import { expect, test } from 'vitest';
import { freeKey } from './freeKey.ts';

test('a key gets a number only where it is taken, and then the first that is free', () => {
  expect(freeKey('cage', ['body', 'rod', 'arm'])).toBe('cage');
  expect(freeKey('cage', ['body', 'cage'])).toBe('cage-2');
  expect(freeKey('cage', ['cage', 'cage-2', 'cage-4'])).toBe('cage-3');
});
