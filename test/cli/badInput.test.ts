import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, readdirSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/cli.ts';
import type { World } from '../../src/cli/World.ts';
import { commands } from '../../src/cli/commands/index.generated.ts';

const folder = mkdtempSync(join(tmpdir(), 'bad-input-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const tiny = readFileSync(new URL('../../examples/tiny.shoot.json', import.meta.url), 'utf8');
const inFolder = (name: string, content: string | Uint8Array): string => {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
};

async function command(argv: string[], lines: string[] = []) {
  let [out, err] = ['', ''];
  const world: World = {
    out: (text) => void (out += text), err: (text) => void (err += text), lines: async function* () { yield* lines; }, ask: undefined,
    colour: false, unicode: true, columns: 100, today: () => new Date('2026-01-01'), stop: new AbortController().signal, exitCode: 0,
  };
  return { code: await run(argv, world), out, err };
}

describe('a file that is not there to be read as one', () => {
  const onUnix = test.skipIf(process.platform === 'win32');
  onUnix('links in a circle, an endless device, an empty one', async () => {
    symlinkSync(join(folder, 'two'), join(folder, 'one'));
    symlinkSync(join(folder, 'one'), join(folder, 'two'));
    expect(await command(['check', join(folder, 'one')])).toMatchObject({ code: 2, err: expect.stringContaining('in a circle') as string });
    expect(await command(['check', '/dev/zero'])).toMatchObject({ code: 2, err: expect.stringContaining('at most 33 MB') as string });
    expect(await command(['check', '/dev/null'])).toMatchObject({ code: 2, err: expect.stringContaining('empty') as string });
  });

  onUnix('a pipe that nobody writes to is given up', { timeout: 20_000 }, async () => {
    spawnSync('mkfifo', [join(folder, 'pipe')]);
    expect(await command(['check', join(folder, 'pipe')])).toMatchObject({ code: 2, err: expect.stringContaining('nothing comes through') as string });
  });

  test('letters that are not UTF-8 have a place, and are never written back spoilt', async () => {
    const latin = inFolder('latin.shoot.json', Buffer.from(tiny.replace('"title": "', '"title": "Caf\u00E9 '), 'latin1'));
    expect(await command(['check', latin])).toMatchObject({ code: 2, err: expect.stringMatching(/line \d+, column \d+: A letter here is not written in UTF-8/) as string });
    const table = inFolder('latin.csv', Buffer.from('name,kind\nPl\u00E5t,plate\n', 'latin1'));
    const into = inFolder('into.shoot.json', tiny);
    expect(await command(['import', table, '--into', into])).toMatchObject({ code: 2, err: expect.stringContaining('line 2, column 3') as string });
    expect(readFileSync(into, 'utf8')).toBe(tiny);
  });
});

test('of thousands of faults the first hundred are shown, and the rest are counted', async () => {
  const draft = JSON.parse(tiny) as { kit: { parts: Record<string, unknown> } };
  for (let at = 0; at < 1000; at++) draft.kit.parts[`bad-${at}`] = { name: at, kind: 'rod' };
  const { code, err } = await command(['check', inFolder('many.shoot.json', JSON.stringify(draft))]);
  expect(code).toBe(2);
  expect(err.trim().split('\n')).toHaveLength(101);
  expect(err).toContain('900 more faults are not shown.');
});

test('one slip in many places is told once, with a count and the key that was meant', async () => {
  const draft = JSON.parse(tiny) as { kit: { parts: Record<string, { points?: Record<string, Record<string, unknown>> }> } };
  const points = Object.values(draft.kit.parts).flatMap(({ points: own = {} }) => Object.values(own));
  for (const point of points) point['outward'] = point['out'];
  const { err } = await command(['check', inFolder('outward.shoot.json', JSON.stringify(draft))]);
  expect(err.trim().split('\n')).toHaveLength(1);
  expect(err).toContain(`There is no key "outward" here. Did you mean "out"? At ${points.length} places: kit/parts/body/points/mount/outward, `);
});

test('lines of a shoot without a setup, and of a glass that no setup uses', async () => {
  const draft = JSON.parse(tiny) as { setups: object; shots?: object; needs: { viewers?: object }; glasses: Record<string, object> };
  const spare = inFolder('spare.shoot.json', JSON.stringify({ ...draft, glasses: { ...draft.glasses, spare: { ...draft.glasses['normal'], name: 'spare glass' } } }));
  expect(await command(['lines', spare, '--glass', 'spare'])).toMatchObject({ code: 2, err: expect.stringContaining('spare glass is not used') as string });
  const bare = inFolder('bare.shoot.json', JSON.stringify({ ...draft, setups: {}, shots: {}, needs: { ...draft.needs, viewers: {} } }));
  expect(await command(['lines', bare])).toMatchObject({ code: 2, err: expect.stringContaining('no setup yet') as string });
});

test('what there is to choose from is listed with a count of the rest; a discipline lists its questions; an empty name is told', async () => {
  expect((await command(['explain', 'nonsense'])).err).toMatch(/Known: .* and \d+ more\./);
  const sight = (await command(['explain', 'sight'])).out.trim().split('\n');
  expect([sight.length > 3, sight.every((line) => /^sight\.\w+ +\S/.test(line))]).toEqual([true, true]);
  for (const argv of [['check', ''], ['new', ''], ['lines', ' ']]) expect(await command(argv)).toMatchObject({ code: 2, err: expect.stringMatching(/^The name of the file is empty\./) as string });
});

test('the version is that of the package', async () => {
  const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string };
  expect(await command(['--version'])).toMatchObject({ code: 0, out: `${version}\n` });
});

describe('what is written', () => {
  test('goes through a link, keeps the rights, and leaves no half file beside it', async () => {
    const place = mkdtempSync(join(folder, 'rights-'));
    writeFileSync(join(place, 'real.json'), tiny);
    chmodSync(join(place, 'real.json'), 0o600);
    symlinkSync('real.json', join(place, 'link.json'));
    expect((await command(['import', inFolder('one.csv', 'name,kind\nRod,rod\n'), '--into', join(place, 'link.json')])).code).toBe(0);
    expect(JSON.parse(readFileSync(join(place, 'real.json'), 'utf8'))).toMatchObject({ kit: { parts: { rod: { kind: 'rod' } } } });
    expect(statSync(join(place, 'real.json')).mode & 0o777).toBe(0o600);
    expect(readdirSync(place)).toEqual(['link.json', 'real.json']);
  });

  test.skipIf(process.platform === 'win32')('is never put in the place of a folder or a pipe', async () => {
    const shoot = inFolder('here.shoot.json', tiny);
    spawnSync('mkfifo', [join(folder, 'out-pipe')]);
    expect(await command(['replace', shoot, 'taking-58', 'block-1-5', '--out', join(folder, 'out-pipe')])).toMatchObject({ code: 2, err: expect.stringContaining('a pipe') as string });
    expect(await command(['replace', shoot, 'taking-58', 'block-1-5', '--out', folder])).toMatchObject({ code: 2, err: expect.stringContaining('a folder') as string });
    expect(await command(['replace', shoot, 'taking-58', 'taking-58'])).toMatchObject({ code: 2, err: expect.stringContaining('Both are') as string });
    expect(statSync(join(folder, 'out-pipe')).isFIFO()).toBe(true);
  });
});

describe('calc', () => {
  const messageOf = async (line: string, name = 'optics.tStop'): Promise<string> => (JSON.parse((await command(['calc', name], [line])).out) as { error: { message: string } }).error.message;
  test('broken lines say where in the line, and speak of a line', async () => {
    expect(await messageOf('{"fNumber":4 "transmittance":0.5}')).toBe('Column 14: A comma is missing here.');
    expect(await messageOf('{"fNumber":4,"fNumber":5,"transmittance":0.5}')).toMatch(/Column 14: .*twice/);
    expect(await messageOf('[')).not.toMatch(/file/);
    expect(await messageOf('fNumber=4')).toContain(`setworthy calc optics.tStop '{`);
    expect((await command(['calc', 'optics.tStop', ' '])).out).toContain('The line is empty.');
    expect(await messageOf('['.repeat(1e5))).toMatch(/deep/);
    expect(await messageOf('{"fNumber":1e400,"transmittance":0.5}')).toContain('a number too large to hold');
    expect(await messageOf('{"marks":[],"atDistanceMm":1}', 'focus.scale')).toBe('Found an empty list; it must hold at least 2 entries.');
  });

  test('a name without its room finds it', async () => {
    expect(await command(['calc', 'tStop'])).toMatchObject({ code: 2, err: expect.stringContaining('Did you mean "optics.tStop"?') as string });
    expect(await command(['calc', 'helicod'])).toMatchObject({ code: 2, err: expect.stringContaining('Did you mean "focus.helicoid"?') as string });
    expect(await command(['calc', '__proto__'])).toMatchObject({ code: 2, err: expect.stringContaining('setworthy calc lists them') as string });
  });
});

describe('import', () => {
  // Block 0 of a screen of 32 × 18 cm, put together by hand from VESA E-EDID 1.4: 1280 × 720 at 60 as its one detailed timing (CTA-861 VIC 4), name "Screen".
  const edid = () => {
    const bytes = new Uint8Array(128);
    bytes.set([0, 255, 255, 255, 255, 255, 255, 0, 0x04, 0x21, 1, 0, 0, 0, 0, 0, 1, 30, 1, 4, 0x80, 32, 18, 120, 2]);
    bytes.set(Array.from({ length: 16 }, () => 1), 38);
    bytes.set([0x01, 0x1d, 0x00, 0x72, 0x51, 0xd0, 0x1e, 0x20, 0x6e, 0x28, 0x55, 0x00, 0x40, 0xb4, 0x10, 0x00, 0x00, 0x1e], 54);
    bytes.set([0, 0, 0, 0xfc, 0, ...Buffer.from('Screen\n      ')], 72);
    for (const at of [90, 108]) bytes.set([0, 0, 0, 0x10], at);
    bytes[127] = (256 - (bytes.reduce((sum, byte) => sum + byte, 0) % 256)) % 256;
    return bytes;
  };
  const hex = (bytes: Uint8Array) => [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join(' ');

  test.each<[string, string | Uint8Array]>([['bytes', edid()], ['hex text', hex(edid())]])('takes a screen from its EDID as %s', async (what, content) => {
    const into = inFolder(`edid-${what.length}.shoot.json`, tiny);
    const { code, out } = await command(['import', inFolder('screen.edid', content), '--into', into]);
    expect(code, out).toBe(0);
    const screens = Object.values((JSON.parse(readFileSync(into, 'utf8')) as { kit: { parts: Record<string, { name: string }> } }).kit.parts).filter(({ name }) => name === 'Screen');
    expect(screens).toMatchObject([{ kind: 'monitor', screen: { diagonalMm: 367, widthPx: 1280, heightPx: 720 } }]);
  });

  test('a broken EDID, a group of columns that is not there', async () => {
    const broken = edid().with(60, 3);
    const into = inFolder('still.shoot.json', tiny);
    expect(await command(['import', inFolder('broken.edid', broken), '--into', into])).toMatchObject({ code: 2, err: expect.stringContaining('checksum') as string });
    expect(readFileSync(into, 'utf8')).toBe(tiny);
    expect(await command(['import', '--columns', 'lenz'])).toMatchObject({ code: 2, err: expect.stringContaining('"lens"') as string });
  });
});

test('a fault of the program itself is told as one, without a trace of its insides', async () => {
  const list = commands as Record<string, unknown>;
  list['broken'] = { summary: '', load: () => Promise.reject(new TypeError('x is not a function')) };
  const result = await command(['broken']).finally(() => delete list['broken']);
  expect(result).toMatchObject({ code: 70, err: expect.stringContaining('Setworthy itself went wrong') as string });
  expect(result.err).not.toMatch(/\bat .*\.ts:\d+/);
});
