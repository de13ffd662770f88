import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import type { Vector } from '../../assembly/placing/Transform.ts';
import type { Wrench } from '../../calc/mechanics/network/forces.ts';
import { type AlongAxes, hardestAttitude } from './hardestAttitude.ts';

const number = fc.double({ min: -50, max: 50, noNaN: true });
const vector = fc.tuple(number, number, number);
const wrench = fc.record({ forceN: vector, momentNm: vector });

/** Some thousand ways, evenly round (a spiral by the golden angle). */
const WAYS = Array.from({ length: 4000 }, (_, at): Vector => {
  const z = 1 - (2 * at + 1) / 4000;
  const turn = at * Math.PI * (3 - Math.sqrt(5));
  return [Math.sqrt(1 - z * z) * Math.cos(turn), Math.sqrt(1 - z * z) * Math.sin(turn), z];
});

function opensAlong([x, y, z]: AlongAxes, w: Vector, coreM: number): number {
  const of = (key: keyof Wrench, k: 0 | 1 | 2): number => w[0] * x[key][k] + w[1] * y[key][k] + w[2] * z[key][k];
  return Math.max(0, -of('forceN', 2)) + Math.hypot(of('momentNm', 0), of('momentNm', 1)) / coreM;
}

property.prop([fc.tuple(wrench, wrench, wrench), fc.double({ min: 1e-3, max: 0.1, noNaN: true })], { numRuns: 50 })('no attitude of thousands asks for more, and one of them for nearly as much', (along, coreM) => {
  const { pullN, nodNm } = hardestAttitude(along, coreM);
  const most = Math.max(...WAYS.map((w) => opensAlong(along, w, coreM)));
  expect(pullN + nodNm / coreM).toBeGreaterThanOrEqual(most * (1 - 1e-9) - 1e-99);
  expect(pullN + nodNm / coreM).toBeLessThanOrEqual(most * 1.01 + 1e-9);
});

test('a weight straight out from the screw, hanging: all of it pulls, and nods with its arm', () => {
  // 10 N at 0.4 m along x; the joint's z is up: pulling along −z it pulls with 10 N and nods with 4 N·m.
  const still: Vector = [0, 0, 0];
  const along: AlongAxes = [{ forceN: [10, 0, 0], momentNm: still }, { forceN: [0, 10, 0], momentNm: [0, 0, 4] }, { forceN: [0, 0, 10], momentNm: [0, -4, 0] }];
  const { pullN, nodNm } = hardestAttitude(along, 0.004);
  expect(pullN).toBeCloseTo(10, 6);
  expect(nodNm).toBeCloseTo(4, 6);
});

test('what weighs nothing asks for nothing, and for a number', () => {
  const none: Wrench = { forceN: [0, 0, 0], momentNm: [0, 0, 0] };
  expect(hardestAttitude([none, none, none], 0.004)).toEqual({ pullN: 0, nodNm: 0 });
});
