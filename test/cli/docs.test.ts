import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

/** The commands that the documentation tells people to type, run as they stand, in order, in a folder of their own. */
const root = new URL('../../', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'docs-'));
for (const name of ['dist', 'examples']) symlinkSync(join(root, name), join(folder, name));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const commandsIn = (file: string): string[] =>
  [...readFileSync(join(root, file), 'utf8').matchAll(/```sh\n([\s\S]*?)```/g)].flatMap(([, block = '']) => block.split('\n').filter((line) => line.startsWith('node dist/cli.js')));

const typed = commandsIn('README.md');

test('the documentation names commands', () => expect(typed.length).toBeGreaterThan(5));

test.each(typed)('%s', (line) => {
  const { status, stderr, stdout } = spawnSync('sh', ['-c', line], { cwd: folder, encoding: 'utf8' });
  expect(stderr).toBe('');
  expect(stdout).not.toBe('');
  expect(status, 'fine, or something in the example fails on purpose').toBeLessThanOrEqual(1);
});

test('the built command starts with no file of this folder but dist', () => {
  expect(execFileSync('node', ['dist/cli.js', '--help'], { cwd: folder, encoding: 'utf8' })).toContain('check');
});
