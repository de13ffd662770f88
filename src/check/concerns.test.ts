import { expect, test } from 'vitest';
import { exampleShoot } from '../../test/tinyShoot.ts';
import { concernsSetup, glassOf } from './concerns.ts';

const shoot = exampleShoot('demo');
const block = { build: 'tripod', joint: 'glasses/block-58/joints/block-seat' };

test('a joint that comes and goes with a glass is about that glass, and about the setups that shoot it', () => {
  expect(glassOf(block)).toBe('block-58');
  // One build, two setups: the block is on it in the boathouse only.
  expect(concernsSetup(shoot, block, 'boathouse-sticks')).toBe(true);
  expect(concernsSetup(shoot, block, 'jetty-sticks')).toBe(false);
});

test('a joint of the build itself is about every setup the build stands in', () => {
  const own = { build: 'tripod', joint: 'builds/tripod/joints/monitor' };
  expect(['boathouse-sticks', 'jetty-sticks', 'jetty-shoulder'].map((setup) => concernsSetup(shoot, own, setup))).toEqual([true, true, false]);
});
