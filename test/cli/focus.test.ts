import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/cli.ts';
import { simulatePull } from '../../src/jobs/simulatePull.ts';
import { tinyShoot } from '../tinyShoot.ts';
import type { World } from '../../src/cli/World.ts';

const folder = mkdtempSync(join(tmpdir(), 'focus-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const demo = new URL('../../examples/demo.shoot.json', import.meta.url).pathname;

async function command(argv: string[], { watched = false, unicode = true, stop = new AbortController() } = {}) {
  let [out, err] = ['', ''];
  const world: World = {
    out: (text) => void (out += text), err: (text) => void (err += text), lines: async function* () { yield* []; }, ask: watched ? () => Promise.resolve('') : undefined,
    colour: false, unicode, columns: 100, today: () => new Date('2026-01-01'), stop: stop.signal, exitCode: 0,
  };
  const code = await run(argv, world);
  return { code, out, err };
}

const changed = (change: (shoot: { kit: { parts: Record<string, { focus: { marks: { angleDeg: number }[] } }> } }) => void): string => {
  const shoot = JSON.parse(readFileSync(demo, 'utf8')) as Parameters<typeof change>[0];
  change(shoot);
  const file = join(folder, 'changed.shoot.json');
  writeFileSync(file, JSON.stringify(shoot));
  return file;
};

describe('scale', () => {
  test('gives the taped marks back as they were taped, and the wheel by the throw: 320° over 310°', async () => {
    const { out, code } = await command(['scale', demo, '--lens', 'set-75-old', '--csv']);
    expect(code).toBe(0);
    const rows = (parse(out) as string[][]).slice(1);
    const taped = rows.filter((row) => row[5] === 'taped').map(([, distance, ring]) => [distance, Number(ring)]);
    expect(taped).toEqual([['infinity', 0], ['9000', 40.3], ['4000', 93], ['2000', 176.7], ['1100', 310]]);
    for (const [, , ring, , wheel] of rows) expect(Number(wheel)).toBeCloseTo((Number(ring) * 320) / 310, 2);
  });

  test('reads distances in feet and in metres alike, and says what lies outside', async () => {
    const feet = await command(['scale', demo, '--lens', 'focuser', '--at', `5'6"`, '--csv']);
    const metres = await command(['scale', demo, '--lens', 'focuser', '--at', '1.6764 m', '--csv']);
    expect(feet.out).toBe(metres.out);
    expect(await command(['scale', demo, '--lens', 'focuser', '--at', '0.4 m'])).toMatchObject({ code: 1, out: expect.stringContaining('0.40\u2009m lies outside') as string });
    expect((await command(['scale', demo, '--lens', 'focuser', '--imperial'])).out).toContain(`6'6"`);
  });

  test('a lens without marks is told to be an estimate; crossed marks and strange names are refused', async () => {
    expect((await command(['scale', demo, '--lens', 'taking-58'])).out).toContain('not to pull by');
    const crossed = changed(({ kit }) => (kit.parts['set-50']!.focus.marks[2]!.angleDeg = 300));
    expect(await command(['scale', crossed, '--lens', 'set-50'])).toMatchObject({ code: 2, err: expect.stringContaining('kit/parts/set-50/focus/marks/3') as string });
    expect(await command(['scale', demo, '--lens', 'focusr'])).toMatchObject({ code: 2, err: expect.stringContaining('"focuser"') as string });
    expect(await command(['scale', demo, '--lens', 'body-a'])).toMatchObject({ code: 2 });
    expect(await command(['scale', demo, '--lens', 'focuser', '--at', '3'])).toMatchObject({ code: 2, err: expect.stringContaining('Add the unit') as string });
  });

  test('its JSON holds what the text shows', async () => {
    const { scales } = JSON.parse((await command(['scale', demo, '--lens', 'focuser', '--json'])).out) as { scales: { wheels: unknown[]; marks: { distanceMm: unknown }[] }[] };
    expect(scales[0]?.wheels).toHaveLength(2);
    expect(scales[0]?.marks[0]?.distanceMm).toBe('infinity');
  });
});

describe('pull', () => {
  const few = ['--trials', '40', '--what-if', '10'];

  test('draws bands, what-if and ranking, with the limits of the model beside them, narrow enough and without colour off a terminal', async () => {
    const { out, err, code } = await command(['pull', demo, '--shot', 'She walks to us, tighter', ...few]);
    expect(code).toBe(0);
    expect(err).toBe('');
    expect(out).toMatch(/pulled by the picture alone[\s\S]*1× │[\s\S]*What if[\s\S]*transmitter mode[\s\S]*What helps most[\s\S]*No published study/);
    expect(out).not.toContain('\u001B');
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  test('a terminal without Unicode gets plain characters', async () => {
    const { out } = await command(['pull', demo, '--shot', '10', ...few], { unicode: false });
    expect(out.slice(out.indexOf('Blur over'), out.indexOf('What if'))).toMatch(/^[\u0020-\u007E\n\u2009°]*$/);
  });

  test('the page and the command give the same numbers', async () => {
    const tiny = new URL('../../examples/tiny.shoot.json', import.meta.url).pathname;
    const { outcome } = JSON.parse((await command(['pull', tiny, '--json'])).out) as { outcome: object };
    const shown = simulatePull(tinyShoot(), 'portrait', () => undefined);
    expect(shown.ok && (JSON.parse(JSON.stringify(shown.value)) as object)).toMatchObject(outcome);
  });

  test('what moves nothing for a subject that stands still far off is told in one line, not in a table of 100 %', async () => {
    const still = join(folder, 'still.shoot.json');
    const shoot = tinyShoot((draft) => {
      Object.assign(draft.shots.portrait, { subject: [{ atS: 0, distanceMm: 30_000 }], tStop: 11 });
      delete draft.shots.portrait.marksMm;
    });
    writeFileSync(still, JSON.stringify(shoot));
    const { out } = await command(['pull', still, ...few]);
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(/What if: no other .* moves the sharp share by half a point: it stays about 100 %\./);
    expect(out).not.toMatch(/^What if, /m);
  });

  test('a seed repeats to the last digit, another does not, and its JSON says what was simulated', async () => {
    const once = await command(['pull', demo, '--shot', '3', '--json', ...few]);
    expect((await command(['pull', demo, '--shot', '3', '--json', ...few])).out).toBe(once.out);
    expect((await command(['pull', demo, '--shot', '3', '--json', '--seed', '2', ...few])).out).not.toBe(once.out);
    expect(JSON.parse(once.out)).toMatchObject({ given: { way: 'picture', focalLengthMm: 100, trials: 40 }, outcome: { bands: expect.any(Array) as unknown[] } });
  });

  test('two tables as CSV', async () => {
    expect((await command(['pull', demo, '--shot', '3', '--csv', ...few])).out).toMatch(/^atS,distanceMm,/);
    expect((await command(['pull', demo, '--shot', '3', '--csv', 'what-if', ...few])).out).toMatch(/^axis,at,[\s\S]*\nmode,fast,/);
  });

  test('progress is shown to somebody who watches, and ctrl-C ends it cleanly', async () => {
    expect((await command(['pull', demo, '--shot', '3', ...few], { watched: true })).err).toMatch(/\d %/);
    const stop = new AbortController();
    const running = command(['pull', demo, '--shot', '3', '--trials', '1000000'], { stop });
    setTimeout(() => stop.abort(), 200);
    expect(await running).toMatchObject({ code: 130, out: '', err: expect.stringContaining('Stopped') as string });
  });

  test('what cannot be simulated says why and which question tells more', async () => {
    expect(await command(['pull', demo, '--shot', '11', ...few])).toMatchObject({ code: 1, err: expect.stringMatching(/No picture reaches .*see lines/) as string });
  });

  test.each([[['--trials', '0']], [['--trials', '2000000']], [['--seed', '-1']], [['--csv', 'all']]])('%s is refused', async (extra) => {
    const { code, err } = await command(['pull', demo, '--shot', '3', ...extra]);
    expect(code).toBe(2);
    expect(err).not.toMatch(/\bat .*\.ts:\d+/);
  });
});
