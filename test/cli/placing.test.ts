import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { run } from '../../src/cli/cli.ts';
import type { World } from '../../src/cli/World.ts';

const folder = mkdtempSync(join(tmpdir(), 'placing-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const read = (file: string) => readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');

type Tree = { [key: string]: unknown };
const merged = (one: Tree, other: Tree): Tree =>
  Object.fromEntries([...new Set([...Object.keys(one), ...Object.keys(other)])].map((key) => [key, isTree(one[key]) && isTree(other[key]) ? merged(one[key], other[key]) : (other[key] ?? one[key])]));
const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null && !Array.isArray(value);

test('the joint that the readme works by hand comes out of the command as it says', async () => {
  const section = /## Placing a rig\n([\s\S]*?)\n## /.exec(read('README.md'))?.[1] ?? '';
  const [, fragment = ''] = /```json\n([\s\S]*?)```/.exec(section) ?? [];
  const [, table = ''] = /```\n(piece[\s\S]*?)```/.exec(section) ?? [];
  const file = join(folder, 'worked.shoot.json');
  writeFileSync(file, JSON.stringify(merged(JSON.parse(read('examples/tiny.shoot.json')) as Tree, JSON.parse(fragment) as Tree)));
  let [out, err] = ['', ''];
  const world: World = {
    out: (text) => void (out += text), err: (text) => void (err += text), lines: async function* () { yield* [] as string[]; }, ask: undefined, colour: false, unicode: true, columns: 100,
    today: () => new Date('2026-01-01'), stop: new AbortController().signal, exitCode: 0,
  };
  expect([await run(['place', file], world), err]).toEqual([0, '']);
  const plain = (text: string) => text.replaceAll(/\s+/g, ' ').trim();
  const rows = table.trim().split('\n').map(plain);
  expect(rows.length).toBe(4);
  for (const row of rows) expect(out.split('\n').map(plain)).toContain(row);
});
