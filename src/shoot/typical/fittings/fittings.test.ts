import { expect, test } from 'vitest';
import type { Point } from '../../schema/mechanics.ts';
import { KINDS } from '../../schema/part.ts';
import { typicalParts } from '../typicalParts.ts';

const FITTED = [
  'cage', 'rod', 'rod clamp', 'arm', 'plate', 'handle', 'motor', 'monitor', 'body', 'lens', 'block', 'focuser', 'gimbal', 'head', 'legs', 'stand', 'transmitter', 'receiver', 'battery plate', 'mount adapter', 'matte box', 'follow focus', 'support', 'collar', 'shoulder pad', 'controller',
] as const satisfies readonly (typeof KINDS)[number][];

const all = Object.entries(typicalParts);
const fitted = all.filter(([, { kind }]) => (FITTED as readonly string[]).includes(kind));

test.each(fitted)('%s can be fixed, and each of its points has a place and looks straight', (_id, { points = {} }) => {
  expect(Object.keys(points).length).toBeGreaterThan(0);
  for (const { at, out, up } of Object.values(points)) {
    expect(at).toBeDefined();
    expect([Math.hypot(...(out ?? [])), Math.hypot(...(up ?? [])), (out ?? []).reduce((sum, one, axis) => sum + one * (up?.[axis] ?? 0), 0)]).toEqual([1, 1, 0]);
  }
});

test('shapes stand where their points are: none floats by itself', () => {
  const away = fitted.flatMap(([id, { points = {}, solids }]) => {
    if (solids === undefined) return [];
    const reach = (axis: 0 | 1 | 2) => solids.flatMap((solid) => {
      const half = solid.shape === 'box' ? solid.sizeMm[axis] / 2 : (('xyz'[axis] === solid.along ? solid.lengthMm : solid.diameterMm) / 2);
      return [(solid.atMm?.[axis] ?? 0) - half, (solid.atMm?.[axis] ?? 0) + half];
    });
    const outside = (point: Point): boolean => ([0, 1, 2] as const).some((axis) => (point.at?.[axis] ?? 0) < Math.min(...reach(axis)) - 10 || (point.at?.[axis] ?? 0) > Math.max(...reach(axis)) + 10);
    return Object.entries(points).filter(([, point]) => point.kind !== 'hand' && outside(point)).map(([name]) => `${id}/${name}`);
  });
  // A collar's foot and a matte box's lie on posts that are not drawn.
  expect(away).toEqual(['collar/base']);
});

/** Common practice: gears of cinema lenses and of what drives them are 0.8 module (DIN 780). */
test('what has teeth has a point to mesh at, and nothing else has', () => {
  const toothed = all.filter(([, { focus, motor, handWheel }]) => (focus?.gear ?? motor?.gear ?? handWheel?.gear) !== undefined).map(([id]) => id);
  expect(all.filter(([, { points = {} }]) => Object.values(points).some(({ kind }) => kind === 'gear')).map(([id]) => id)).toEqual(toothed);
});
