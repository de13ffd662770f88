import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/cli.ts';
import { Stopped } from '../../src/cli/Refusal.ts';
import type { World } from '../../src/cli/World.ts';

const folder = mkdtempSync(join(tmpdir(), 'commands-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const tiny = new URL('../../examples/tiny.shoot.json', import.meta.url).pathname;
const inFolder = (name: string, content: string): string => {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
};

/** Runs one command line in a world of its own. */
async function command(argv: string[], given: { lines?: string[]; answers?: string[]; colour?: boolean; stops?: boolean; columns?: number } = {}) {
  let out = '';
  let err = '';
  const answers = [...(given.answers ?? [])];
  const world: World = {
    out: (text) => void (out += text),
    err: (text) => void (err += text),
    lines: async function* () {
      yield* given.lines ?? [];
    },
    ask: given.answers === undefined ? undefined : (question) => given.stops === true ? Promise.reject(new Stopped()) : ((out += question), Promise.resolve(answers.shift() ?? '')),
    colour: given.colour ?? false,
    unicode: true,
    columns: given.columns ?? 100,
    today: () => new Date('2026-01-01'),
    stop: new AbortController().signal,
    exitCode: 0,
  };
  const code = await run(argv, world);
  return { code, out, err };
}

describe('calc', () => {
  test('answers a line for a line, in order; a bad one gets its fault in place and the exit code says so', async () => {
    const fine = '{"fNumber":2,"transmittance":0.75}';
    const { code, out } = await command(['calc', 'optics.tStop'], { lines: [fine, '{"fNumber":2', '{"fNumber":-1,"transmittance":0.5}', '', fine] });
    const lines = out.trim().split('\n').map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines).toMatchObject([{ tNumber: expect.closeTo(2.309, 3) as number }, { error: { message: expect.any(String) as string } }, { error: { path: 'fNumber' } }, { tNumber: expect.any(Number) as number }]);
    expect(code).toBe(2);
  });

  test('infinity is null both ways, and the key is there', async () => {
    const { out } = await command(['calc', 'optics.depthOfField', '{"focalLengthMm":50,"fNumber":8,"focusDistanceMm":20000,"circleOfConfusionMm":0.03,"from":"lens"}']);
    expect(JSON.parse(out)).toMatchObject({ farMm: null, totalMm: null });
  });

  test('lists, explains, and offers the nearest name', async () => {
    expect((await command(['calc'])).out).toContain('optics.depthOfField');
    expect((await command(['calc', 'optics.depthOfField', '--about'])).out).toMatch(/takes[\s\S]*gives[\s\S]*formula[\s\S]*source[\s\S]*example/);
    expect(await command(['calc', 'optics.depthOfFeild'])).toMatchObject({ code: 2, err: expect.stringContaining('"optics.depthOfField"') as string });
  });
});

describe('check', () => {
  test('is plain text off a terminal, narrow enough, and its JSON holds at least as much', async () => {
    const text = await command(['check', tiny, '--working', '--all']);
    expect(text.out).not.toContain('\u001B');
    expect(Math.max(...text.out.split('\n').filter((line) => !line.includes('kit/')).map((line) => line.length))).toBeLessThanOrEqual(110);
    const json = JSON.parse((await command(['check', tiny, '--json'])).out) as { answers: { says: string; unknown?: string; rests: unknown[] }[] };
    for (const { says } of json.answers.filter(({ unknown }) => unknown === undefined).slice(0, 8)) expect(text.out.replaceAll(/\s+/g, ' ')).toContain(says.split(' ').slice(0, 3).join(' '));
    expect(json.answers.some(({ rests }) => rests.length > 0)).toBe(true);
  });

  test('what reaches to infinity says so in JSON too, by the word that files have for it', async () => {
    const { out } = await command(['check', tiny.replace('tiny', 'demo'), '--question', 'picture.depth', '--json']);
    expect(out).toContain('"value": "infinity"');
    expect(out).not.toContain(': null');
  });

  test('exit code 1 where something fails, and colour where somebody sees it', async () => {
    const dark = inFolder('dark.shoot.json', readFileSync(tiny, 'utf8').replace('"imageCircleMm": 43.3', '"imageCircleMm": 30'));
    const { code, out } = await command(['check', dark, '--question', 'picture.coverage'], { colour: true });
    expect(code).toBe(1);
    expect(out).toContain('\u001B[38;5;166m');
  });

  test('imperial shows inches', async () => {
    expect((await command(['check', tiny, '--question', 'picture.coverage', '--imperial'])).out).toContain('1.69\u2009in');
  });

  test.each([['--setup', 'stiks', '"sticks"'], ['--question', 'picture.coverag', '"picture.coverage"'], ['--lens', 'taking-59', '"taking-58"']])('%s %s offers %s', async (option, name, near) => {
    expect(await command(['check', tiny, option, name])).toMatchObject({ code: 2, err: expect.stringContaining(near) as string });
  });
});

describe('which one is meant', () => {
  test.each(['place', 'swaps', 'lines', 'check'])('%s takes every setup where none is named', async (name) => {
    const two = inFolder('two.shoot.json', readFileSync(tiny, 'utf8').replace('"setups": {', '"setups": {"other": {"name": "Other", "camera": "camera", "glasses": ["normal"], "mode": "open-gate", "frameRateHz": 25}, '));
    const { out, err, code } = await command([name, two]);
    expect([err, code < 2]).toEqual(['', true]);
    if (name !== 'check') for (const setup of [/^Other\b/m, /^Sticks\b/m]) expect(out).toMatch(setup);
  });

  test('a model holds one setup: of several it is asked which', async () => {
    const two = inFolder('two.shoot.json', readFileSync(tiny, 'utf8').replace('"setups": {', '"setups": {"other": {"name": "Other", "camera": "camera", "glasses": ["normal"], "mode": "open-gate", "frameRateHz": 25}, '));
    const model = join(folder, 'two.glb');
    expect(await command(['place', two, '--gltf', model])).toMatchObject({ code: 2, err: expect.stringContaining('Say which with --setup: other, sticks.') as string });
    expect(existsSync(model)).toBe(false);
  });

  test('a part of a name offers those that have it', async () => {
    expect((await command(['explain', 'coverage'])).err).toContain('Did you mean "picture.coverage"?');
    expect((await command(['check', tiny, '--lens', 'taking'])).err).toContain('"taking-58"');
  });
});

describe('bad input is a message with exit code 2 and no stack trace', () => {
  const files: [string, () => string, RegExp][] = [
    ['no such file', () => join(folder, 'missing.shoot.json'), /no such file/],
    ['a folder', () => folder, /a folder, not a file/],
    ['half a file', () => inFolder('half.shoot.json', readFileSync(tiny, 'utf8').slice(0, 400)), /line \d+, column \d+/],
    ['not JSON', () => inFolder('notes.txt', 'Dear crew'), /line 1, column 1/],
    ['an empty file', () => inFolder('empty.json', ''), /empty/],
    ['a newer file', () => inFolder('newer.json', readFileSync(tiny, 'utf8').replace('"version": 0', '"version": 9')), /reads up to 0/],
    ['a picture', () => inFolder('picture.png', '\u0000\u0001PNG'), /not a text file/],
  ];
  test.each(files)('%s', async (_what, file, words) => {
    const { code, err, out } = await command(['check', file()]);
    expect(code).toBe(2);
    expect(err).toMatch(words);
    expect(`${err}${out}`).not.toMatch(/\bat .*\.ts:\d+/);
  });

  test('a figure in quotation marks, or with its unit, is asked for as a plain number', async () => {
    const quoted = inFolder('quoted.shoot.json', readFileSync(tiny, 'utf8').replace(/"imageCircleMm": [\d.]+/, `"imageCircleMm": "43.3 mm"`));
    expect((await command(['check', quoted])).err).toMatch(/imageCircleMm: Found "43.3 mm"; it must be a number or an object\. Write 43\.3: it stands in mm here/);
    const feet = inFolder('feet.shoot.json', readFileSync(tiny, 'utf8').replace(/"distanceMm": [\d.]+\}\]/, `"distanceMm": "5'6"}]`));
    expect((await command(['check', feet])).err).toMatch(/distanceMm: Found "5'6"; it must be .*"infinity"/);
  });

  test('a command, an option, an argument that is not there', async () => {
    expect(await command(['chek'])).toMatchObject({ code: 2, err: expect.stringContaining('"check"') as string });
    expect(await command(['check', tiny, '--al'])).toMatchObject({ code: 2 });
    expect(await command(['check'])).toMatchObject({ code: 2 });
  });
});

describe('new', () => {
  test('who stops at a question is told that nothing was written', async () => {
    const file = join(folder, 'stopped.shoot.json');
    const stopped = await command(['new', file], { answers: [], stops: true });
    expect(stopped).toMatchObject({ code: 130, err: expect.stringContaining('Nothing was written') as string });
    expect(existsSync(file)).toBe(false);
  });

  test('asks, understands lengths, offers near names, and writes a shoot that can be checked', async () => {
    const file = join(folder, 'asked.shoot.json');
    const { out, err, code } = await command(['new', file, '--puller', 'none'], { answers: ['Night train', 'body-ful-frame', 'body-full-frame', '', '', '', '', '', '', `5'6"`] });
    expect(code).toBe(0);
    expect(err).toContain('Did you mean "body-full-frame"?');
    expect(out).toContain(`Next: setworthy check ${file}`);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ title: 'Night train', shots: { first: { subject: [{ distanceMm: expect.closeTo(1676.4, 6) as number }] } } });
    expect((await command(['check', file])).code).toBeLessThanOrEqual(1);
  });

  test('takes an aspect and a stop as they are written, and asks nothing about a focuser that is not there', async () => {
    const file = join(folder, 'written.shoot.json');
    const { out } = await command(['new', file, '--aspect', '16:9', '--t-stop', 'T2.8', '--lens', 'anamorphic-2x-50'], { answers: [] });
    expect(out).not.toContain('Focuser to sensor plane');
    expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ needs: { delivery: { aspect: 16 / 9 } }, shots: { first: { tStop: 2.8 } } });
    expect((await command(['new', join(folder, 'half.json'), '--packs', '2.5'])).err).toContain('whole number');
  });

  test('its help names every answer that can be chosen', async () => {
    for (const argv of [['new', '--help'], ['help', 'new']]) expect((await command(argv)).out.replaceAll(/\s+/g, ' ')).toMatch(/<file>.*anamorphic-2x-50.*monitor-17/);
  });

  test('lists the typical classes by kind, or those of one', async () => {
    const all = (await command(['new', '--classes'])).out;
    for (const wanted of [/^cage\n {2}cage +Camera cage$/m, /^rod\n {2}rod-15-200/m, /^arm\n/m, /^gimbal\n/m, /^body\n/m]) expect(all).toMatch(wanted);
    const arms = (await command(['new', '--classes', 'arm'])).out;
    expect(arms).toContain('arm-short');
    expect(arms).not.toContain('cage');
    expect(await command(['new', '--classes', 'gimbl'])).toMatchObject({ code: 2, err: expect.stringContaining('"gimbal"') as string });
    expect(await command(['new'])).toMatchObject({ code: 2, err: expect.stringContaining('A file to write is needed') as string });
  });

  test('never writes over a file', async () => {
    const file = inFolder('mine.shoot.json', 'mine');
    expect(await command(['new', file])).toMatchObject({ code: 2, err: expect.stringContaining('exists already') as string });
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });

  test('writes nothing where an answer is wrong or the folder cannot be written', async () => {
    expect((await command(['new', join(folder, 'no.json'), '--distance', 'far'])).code).toBe(2);
    expect(existsSync(join(folder, 'no.json'))).toBe(false);
    expect((await command(['new', join(folder, 'not', 'there.json')])).err).toContain('no such file or folder');
  });
});

describe('import and replace', () => {
  test('good rows go in, bad ones are told with row and column', async () => {
    const shoot = inFolder('into.shoot.json', readFileSync(tiny, 'utf8'));
    const { code, err, out } = await command(['import', inFolder('kit.csv', 'name,kind,massG\nRod,rod,95\nBent,rodd,95\n'), '--into', shoot]);
    expect(code).toBe(2);
    expect(err).toMatch(/row 3, column kind/);
    expect(err).toContain('One row was left out');
    expect(out).toContain('1 part taken into');
    expect(JSON.parse(readFileSync(shoot, 'utf8'))).toMatchObject({ kit: { parts: { rod: { massG: 95 } } } });
  });

  test('a typical class takes the place of a part, and joins the kit', async () => {
    const shoot = inFolder('class.shoot.json', readFileSync(tiny, 'utf8'));
    expect(await command(['replace', shoot, 'monitor-5', 'monitor-9'])).toMatchObject({ code: 0, out: expect.stringContaining('9-inch monitor in place of') as string });
    expect(JSON.parse(readFileSync(shoot, 'utf8'))).toMatchObject({ kit: { parts: { 'monitor-9': { basis: 'typical' } } }, builds: { camera: { pieces: { monitor: { of: 'monitor-9' } } } } });
    expect((await command(['replace', shoot, 'monitor-9', 'monitor-18'])).err).toMatch(/Did you mean "monitor-1[37]"/);
  });

  test('a part replaced leaves the old build beside the new', async () => {
    mkdirSync(join(folder, 'out'));
    const out = join(folder, 'out', 'next.shoot.json');
    const shoot = inFolder('swap.shoot.json', readFileSync(tiny, 'utf8').replace('"taking-58": {', '"taking-60": {"name": "Other lens", "kind": "lens", "lens": {"mount": "short 18 mm", "focalLengthMm": 60, "squeeze": 1}}, "taking-58": {'));
    const result = await command(['replace', shoot, 'taking-58', 'Other lens', '--out', out]);
    expect(result.code).toBe(0);
    expect(result.out).toContain('What broke');
    expect(JSON.parse(readFileSync(out, 'utf8'))).toMatchObject({ glasses: { normal: { pieces: { lens: { of: 'taking-60' } } }, 'normal-before': { pieces: { lens: { of: 'taking-58' } } } } });
    expect((await command(['replace', shoot, 'taking-60', 'taking-58'])).err).toContain('not used');
  });
});

test('the built program is plain ASCII, as it is read: else its patterns would look for other signs than ° − × “ ”', () => {
  expect(readFileSync(new URL('../../dist/program.cjs', import.meta.url), 'latin1')).toMatch(/^[\0-\x7f]*$/);
});

describe('check narrowed', () => {
  const demo = new URL('../../examples/demo.shoot.json', import.meta.url).pathname;
  const shoot = JSON.parse(readFileSync(demo, 'utf8')) as { setups: Record<string, { camera: string; stations?: string[] }> };

  test('a setup takes in what hangs on its builds and on its days, and nothing of other builds', async () => {
    const setup = 'jetty-sticks';
    const builds = [shoot.setups[setup]?.camera, ...(shoot.setups[setup]?.stations ?? [])];
    const { out } = await command(['check', demo, '--setup', setup, '--json']);
    const { answers } = JSON.parse(out) as { answers: { question: string; subject: { setup?: string; build?: string; day?: string } }[] };
    const asked = new Set(answers.map(({ question }) => question));
    for (const question of ['hold.screw', 'hold.turning', 'power.day']) expect(asked).toContain(question);
    for (const { subject } of answers) {
      expect([setup, undefined]).toContain(subject.setup);
      expect([...builds, undefined]).toContain(subject.build);
    }
  });

  test('filters that nothing passes say which of them to leave out', async () => {
    expect((await command(['check', demo, '--setup', 'jetty-sticks', '--shot', '3', '--question', 'hold.screw'])).out).toMatch(/Nothing was asked: no answer is about .*--shot 3 and --question hold\.screw\s+together\. Leave out --shot or --question/);
    expect((await command(['check', tiny, '--question', 'swap.order'])).out).toMatch(/no answer is about --question swap\.order\. setworthy explain/);
  });
});

test('columns of a table are told for a kind of part as well: a cage has none of its own', async () => {
  const cage = (await command(['import', '--columns', 'cage'])).out;
  expect(cage).toMatch(/^massG/m);
  expect(cage).not.toMatch(/^lens\//m);
  expect((await command(['import', '--columns', 'monitor'])).out).toMatch(/^screen\/diagonalMm/m);
});

test('explain knows how pieces are placed by name, and lists it beside the questions', async () => {
  expect((await command(['explain'])).out).toMatch(/^points +Where a part can be fixed/m);
  const { out, code } = await command(['explain', 'points']);
  expect(code).toBe(0);
  expect(out).toMatch(/\+X to camera left[\s\S]*^at +where it is[\s\S]*^out +direction out of the part/m);
  expect((await command(['explain', 'point'])).err).toContain('"points"');
});

test('asked for inches and pounds, neither findings nor mends are left in millimetres', async () => {
  const demo = new URL('../../examples/demo.shoot.json', import.meta.url).pathname;
  for (const question of ['balance', 'space.gearReach', 'hold.screw']) {
    expect((await command(['check', demo, '--imperial', '--all', '--question', question])).out.match(/\u2009(mm|N|N·m|kg|g)(?![\p{L}\d·/²])/u)).toBeNull();
  }
}, 60_000);

describe.each([60, 80])('on a terminal of %d columns', (columns) => {
  const demo = new URL('../../examples/demo.shoot.json', import.meta.url).pathname;
  test.each(['lines', 'place', 'swaps', 'check'])('%s fits', async (name) => {
    const { out } = await command([name, demo, ...(name === 'check' ? ['--working', '--question', 'picture.depth'] : []), '--setup', 'jetty-sticks'], { columns });
    const tooLong = out.split('\n').filter((line) => line.length > columns);
    expect(tooLong).toEqual([]);
  }, 60_000);
});
