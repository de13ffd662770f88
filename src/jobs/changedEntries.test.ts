import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { changedEntries, withEntries } from './changedEntries.ts';

const key = fc.stringMatching(/^[a-d]{1,2}$/);
const tree = fc.letrec((tie) => ({
  node: fc.oneof({ maxDepth: 4 }, fc.integer(), fc.array(fc.integer(), { maxLength: 3 }), fc.dictionary(key, tie('node'), { maxKeys: 4, noNullPrototype: true })),
})).node;
const root = fc.dictionary(key, tree, { maxKeys: 4, noNullPrototype: true });

property.prop([root, root])('a state with the changes to another is that other', (before, next) => {
  expect(withEntries(before, changedEntries(before, next))).toEqual(next);
});

test('what is untouched stays the same object', () => {
  const before = { kit: { parts: { a: { massG: 1 }, b: { massG: 2 } } }, builds: { c: {} } };
  const next = { ...before, kit: { parts: { ...before.kit.parts, a: { massG: 3 } } } };
  const changes = changedEntries(before, next);
  expect(changes).toEqual([{ keys: ['kit', 'parts', 'a'], value: { massG: 3 } }]);
  expect(withEntries(before, changes).builds).toBe(before.builds);
});
