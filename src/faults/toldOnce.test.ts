import { expect, test } from 'vitest';
import { toldOnce } from './toldOnce.ts';

const wrong = (path: string) => ({ path, message: 'There is no key "outward" here.', cure: 'Did you mean "out"?' });

test('the same fault at many places is told once, with their count; what differs stands alone, in the order found', () => {
  const other = { path: 'title', message: 'This is missing; it must be text.' };
  const many = ['a', 'b', 'c', 'd', 'e'].map((id) => wrong(`kit/parts/${id}/points/top/outward`));
  expect(toldOnce([...many.slice(0, 4), other, ...many.slice(4)])).toEqual([
    'There is no key "outward" here. Did you mean "out"? At 5 places: kit/parts/a/points/top/outward, kit/parts/b/points/top/outward, kit/parts/c/points/top/outward and 2 more.',
    'title: This is missing; it must be text.',
  ]);
  expect(toldOnce(many.slice(0, 2))).toEqual(['There is no key "outward" here. Did you mean "out"? At 2 places: kit/parts/a/points/top/outward and kit/parts/b/points/top/outward.']);
});

test('one message about two keys is two faults', () => {
  expect(toldOnce([{ path: 'a/massG', message: 'This is missing.' }, { path: 'a/lengthMm', message: 'This is missing.' }])).toHaveLength(2);
});
