import { expect, test } from 'vitest';
import type { Point } from '../shoot/schema/mechanics.ts';
import { typicalParts } from '../shoot/typical/typicalParts.ts';
import { mateFault } from './mates.ts';

const points = Object.entries(typicalParts).flatMap(([id, part]) => Object.entries(part.points ?? {}).map(([name, point]) => ({ id, kind: part.kind, name, point })));
const partners = (point: Point, kind?: string) => points.filter((other) => (kind === undefined || other.kind === kind) && mateFault(point, other.point) === undefined);

/** What a person holds, or lays against something that has no point of its own. */
const MEETS_NO_PART: ReadonlySet<string> = new Set(['hand', 'surface']);

test.each(points.filter(({ point }) => !MEETS_NO_PART.has(point.kind)))('$id: something typical goes on its $name', ({ id, point }) => {
  // Small bodies have a cold shoe on top, and nothing typical has a foot for it.
  if (point.kind === 'shoe') return;
  expect(partners(point).filter((other) => other.id !== id).length).toBeGreaterThan(0);
});

test('every lens goes on a body by itself or by an adapter, and each adapter on both', () => {
  for (const { name, kind, point } of points.filter((one) => one.point.kind === 'lens mount')) {
    const others = kind === 'body' ? ['lens', 'mount adapter'] : name === 'front' ? ['lens'] : ['body', 'mount adapter'];
    expect(others.flatMap((other) => partners(point, other)).length).toBeGreaterThan(0);
  }
});
