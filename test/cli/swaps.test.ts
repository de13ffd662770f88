import { expect, test } from 'vitest';
import { spawnSync } from 'node:child_process';

const swaps = (...argv: string[]) => spawnSync('node', ['dist/cli.js', 'swaps', 'examples/demo.shoot.json', ...argv], { cwd: new URL('../../', import.meta.url).pathname, encoding: 'utf8' });

test('prints minutes from lens to lens, what is opened and moved, and calibrates with fingers clear', () => {
  const { status, stdout, stderr } = swaps('--setup', 'jetty-sticks');
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toMatch(/minutes from, to[\s\S]*open 35 mm 2× prime[\s\S]*calibrate Small motor, fingers clear/);
});

test('a change whose motor does not reach is marked, and neither meshes nor calibrates', () => {
  const { status, stdout } = swaps('--setup', 'jetty-shoulder');
  expect(status).toBe(0);
  expect(stdout).toMatch(/min\*[\s\S]*\* cannot be finished as built/);
  const change = stdout.slice(stdout.indexOf('block on 85 mm → block on 105 mm')).split('\n\n')[0] ?? '';
  expect(change).toMatch(/cannot be finished as built[\s\S]*does not reach the gear of Variable diopter: short by/);
  expect(change).not.toMatch(/into mesh|calibrate/);
});

test('a setup that is not there is offered the nearest', () => {
  expect(swaps('--setup', 'jetty-stiks')).toMatchObject({ status: 2, stderr: expect.stringContaining('"jetty-sticks"') as string });
});
