import { expect, test } from 'vitest';
import { spawnSync } from 'node:child_process';

const swaps = (...argv: string[]) => spawnSync('node', ['dist/cli.js', 'swaps', 'examples/demo.shoot.json', ...argv], { cwd: new URL('../../', import.meta.url).pathname, encoding: 'utf8' });

test('prints minutes from lens to lens, what is opened and moved, and calibrates with fingers clear', () => {
  const { status, stdout, stderr } = swaps('--setup', 'jetty-sticks');
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toMatch(/minutes from, to[\s\S]*open 35 mm 2× prime[\s\S]*calibrate Small motor, fingers clear/);
});

test('a setup that is not there is offered the nearest', () => {
  expect(swaps('--setup', 'jetty-stiks')).toMatchObject({ status: 2, stderr: expect.stringContaining('"jetty-sticks"') as string });
});
