import { chmodSync, existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { run } from '../../src/cli/cli.ts';
import type { World } from '../../src/cli/World.ts';

const folder = mkdtempSync(join(tmpdir(), 'papers-command-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const tiny = new URL('../../examples/tiny.shoot.json', import.meta.url).pathname;

async function command(argv: string[], stop = new AbortController(), onErr: (text: string) => void = () => undefined) {
  let out = '';
  let err = '';
  const world: World = {
    out: (text) => void (out += text), err: (text) => { err += text; onErr(text); }, lines: async function* () { yield* [] as string[]; }, ask: undefined, colour: false, unicode: true, columns: 100,
    today: () => new Date(2026, 10, 25), stop: stop.signal, exitCode: 0,
  };
  const code = await run(argv, world);
  return { code, out, err };
}

test('every paper of every setup, with progress, and all of it in one zip', async () => {
  const out = join(folder, 'all');
  const { code, out: said, err } = await command(['papers', tiny, '--out', out]);
  expect(code).toBe(0);
  expect(said).toMatch(/papers written/);
  expect(err).toMatch(/1 of \d+/);
  expect(readdirSync(out)).toEqual(expect.arrayContaining(['pack-list.pdf', 'phone.html']));
  const zip = readdirSync(out).find((name) => name.endsWith('.zip')) ?? '';
  expect(readFileSync(join(out, zip)).subarray(0, 2).toString()).toBe('PK');
}, 60_000);

test('one kind alone; a kind or setup that is not there is refused with the nearest', async () => {
  const out = join(folder, 'one');
  expect((await command(['papers', tiny, '--out', out, '--only', 'pack-list'])).code).toBe(0);
  expect(readdirSync(out).toSorted()).toEqual(['pack-list.csv', 'pack-list.pdf']);
  expect(await command(['papers', tiny, '--out', out, '--only', 'pack-lists'])).toMatchObject({ code: 2, err: expect.stringContaining('"pack-list"') as string });
  expect(await command(['papers', tiny, '--out', out, '--setup', 'nowhere'])).toMatchObject({ code: 2, err: expect.stringContaining('setup') as string });
});

test('a folder that cannot be made, and ctrl-C, leave nothing half-written', async () => {
  const file = join(folder, 'a-file');
  writeFileSync(file, 'x');
  expect(await command(['papers', tiny, '--out', file])).toMatchObject({ code: 2, err: expect.stringContaining('a folder is needed') as string });
  if (process.getuid?.() !== 0) {
    const locked = join(folder, 'locked');
    await command(['papers', tiny, '--out', locked, '--only', 'pack-list']);
    chmodSync(locked, 0o500);
    expect((await command(['papers', tiny, '--out', join(locked, 'in')])).code).toBe(2);
  }
  if (existsSync('/proc/self')) {
    const { code, err } = await command(['papers', tiny, '--out', '/proc/no/papers']);
    expect([code, err]).toEqual([2, '/proc/no/papers: There is no such file or folder.\n']);
    expect((await command(['ring', '--inner', '95mm', '--outer', '114mm', '--out', '/proc/no/ring'])).code).toBe(2);
  }
  const stopped = join(folder, 'stopped');
  const stop = new AbortController();
  const { code, err } = await command(['papers', tiny, '--out', stopped], stop, (text) => text.includes('3 of') && stop.abort());
  expect(code).not.toBe(0);
  expect(err).toContain('Nothing was written');
  expect(existsSync(stopped)).toBe(false);
}, 60_000);

test('a ring by its lengths; one that cannot be printed is refused', async () => {
  const name = join(folder, 'ring');
  expect(await command(['ring', '--inner', '95mm', '--outer', '4.49in', '--out', name])).toMatchObject({ code: 0, out: expect.stringMatching(/no safety part/) as string });
  expect(existsSync(`${name}.3mf`) && existsSync(`${name}.stl`)).toBe(true);
  expect(await command(['ring', '--inner', '95mm', '--outer', '95mm', '--out', name])).toMatchObject({ code: 2, err: expect.stringContaining('wall') as string });
});

test('what a phone page gave back is taken in by import; what belongs elsewhere is told', async () => {
  const into = join(folder, 'day.shoot.json');
  writeFileSync(into, readFileSync(tiny));
  const part = Object.keys((JSON.parse(readFileSync(tiny, 'utf8')) as { kit: { parts: object } }).kit.parts)[0] ?? '';
  const file = join(folder, 'measured.json');
  const figure = (path: string) => ({ path, value: 812, measuredOn: '2026-11-25' });
  writeFileSync(file, JSON.stringify({ format: 'setworthy measured', version: 0, shoot: 'another', figures: [figure(`kit/parts/${part}/massG`), figure('kit/parts/nowhere/massG')], ticks: {} }));
  const { code, out, err } = await command(['import', file, '--into', into]);
  expect({ code, out }).toEqual({ code: 2, out: expect.stringContaining('1 measured figure') as string });
  expect(err).toMatch(/made for "another"[\s\S]*kit\/parts\/nowhere\/massG/);
  expect(JSON.parse(readFileSync(into, 'utf8'))).toMatchObject({ kit: { parts: { [part]: { massG: { value: 812, basis: 'measured', measuredOn: '2026-11-25' } } } } });
});
