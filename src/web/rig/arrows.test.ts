import { describe, expect, test } from 'vitest';
import type { RigForces } from '../../jobs/views/rigForces.ts';
import { arrowsOf, spanMm, wayWords } from './arrows.ts';

const forces: RigForces = {
  joints: [
    { path: 'low', type: 'wedge', by: 'head', on: 'body', atMm: [0, -50, 0], forceN: [0, 30, 0], momentNm: [1, 0, 0] },
    { path: 'high', type: 'one screw', by: 'body', on: 'screen', atMm: [0, 80, 0], forceN: [0, 5, 0], momentNm: [0, 0, 0.2] },
  ],
  outer: [{ ref: 'screen', kind: 'weight', atMm: [0, 120, 0], forceN: [0, -5, 0], momentNm: [0, 0, 0] }],
  untold: [],
};

describe('arrows', () => {
  test('of the whole rig: each joint on what it holds, the strongest first', () => {
    expect(arrowsOf(forces, undefined).map(({ key, forceN }) => [key, forceN[1]])).toEqual([['low', 30], ['high', 5], ['outer 0', -5]]);
  });

  test('of one piece: what it holds pushes back', () => {
    const own = arrowsOf(forces, 'body');
    expect(own.map(({ joint, forceN, momentNm }) => [joint?.by, joint?.on, forceN[1], momentNm[0] + momentNm[2]])).toEqual([['head', 'body', 30, 1], ['screen', 'body', -5, -0.2]]);
    expect(arrowsOf(forces, 'head')[0]?.forceN).toEqual([-0, -30, -0]);
    expect(arrowsOf(forces, 'nothing of it')).toEqual([]);
  });

  test('are sized by how far apart they stand, and no less than a hand’s breadth', () => {
    expect(spanMm(forces)).toBe(170);
    expect(spanMm({ joints: [], outer: [], untold: [] })).toBe(100);
  });

  test.each([
    [[0, 10, 0], 'up'], [[0, -10, 1], 'down'], [[7, 7.1, 0], 'up and to camera left'], [[-3, 0, -9], 'back'], [[-4, 0, 9], 'ahead and to camera right'], [[0, 0, 0], ''],
  ] as const)('%j goes %s', (force, words) => expect(wayWords(force)).toBe(words));
});
