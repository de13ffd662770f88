import { expect, test } from 'vitest';
import { columnsOf, processWorld } from './processWorld.ts';

test('ctrl-C is left to the system until a command asks to hear it: work that never looks up must not swallow it', () => {
  const before = process.listenerCount('SIGINT');
  const world = processWorld();
  expect(process.listenerCount('SIGINT')).toBe(before);
  const { stop } = world;
  expect(process.listenerCount('SIGINT')).toBe(before + 1);
  expect(world.stop).toBe(stop);
  process.emit('SIGINT');
  expect(stop.aborted).toBe(true);
  process.removeAllListeners('SIGINT');
});

test('a pipe is as wide as COLUMNS says, a terminal as wide as it is', () => {
  expect([columnsOf(undefined, '80'), columnsOf(132, '80'), columnsOf(undefined, undefined), columnsOf(undefined, 'wide'), columnsOf(0, '60')]).toEqual([80, 132, 110, 110, 60]);
});
