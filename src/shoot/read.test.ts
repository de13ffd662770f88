import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Draft, tinyShoot } from '../../test/tinyShoot.ts';
import { migrate } from './migrate.ts';
import { checkShoot, readKit, readShoot } from './read.ts';
import { writeShoot } from './write.ts';

const turnedRound = ({ a, b }: Draft): Draft => ({ a: b, b: a });

const tinyText = readFileSync(new URL('../../examples/tiny.shoot.json', import.meta.url), 'utf8');

/** The faults of the tiny shoot after a change. */
function faultsAfter(change: (draft: Draft) => void) {
  const draft = JSON.parse(tinyText) as Draft;
  change(draft);
  const read = checkShoot(draft);
  return read.ok ? [] : read.faults;
}

describe('broken text is refused with line and column', () => {
  test.each([
    ['{"format": "setworthy shoot",\n  "version": 0,,}', { line: 2, column: 16 }],
    ['{"format": "setworthy shoot"', { line: 1 }],
    ['{\n"a": 1,\n"a": 2}', { line: 3, message: expect.stringContaining('stands twice') as string }],
    [`{'format': 'setworthy shoot'}`, { line: 1, column: 2, cure: 'Names and texts stand in straight double quotes.' }],
    ['{"massG": NaN}', { line: 1, column: 11, cure: expect.stringContaining('Leave a figure out') as string }],
    ['{"massG": 1,\n}', { line: 2, column: 1, cure: expect.stringContaining('comma') as string }],
    ['{massG: 1}', { cure: 'Keys stand in straight double quotes.' }],
    ['{"flies": True}', { cure: 'Write true or false.' }],
    ['', { message: 'The file is empty.' }],
    ['{"format": "setworthy shoot",\n "kit": {"__proto__": {}}}', { line: 2, path: 'kit/__proto__' }],
    ['{"format": "setworthy kit"}', { path: 'format', cure: expect.stringContaining('a kit alone') as string }],
    ['PK\u0003\u0004', { message: 'This is not a text file.' }],
    ['[1, 2]', { message: 'A shoot file is one JSON object.' }],
    ['{"format": "something else"}', { path: 'format' }],
  ])('%j', (text, fault) => expect(readShoot(text)).toMatchObject({ ok: false, faults: [fault] }));

  test.each([['lists', '['.repeat(100_000)], ['objects that close', `${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)}`]])('%s in each other without end have a place too', (_what, text) =>
    expect(readShoot(text)).toMatchObject({ ok: false, faults: [{ line: 1, message: expect.stringContaining('deep') as string }] }));

  test('brackets inside texts are not nesting', () => expect(readShoot(`{"a": "${'[\\"'.repeat(500)}"}`)).toMatchObject({ ok: false, faults: [{ path: 'format' }] }));

  test('a file of a hundred megabytes is refused before it is parsed', () =>
    expect(readShoot(' '.repeat(100 * 1024 * 1024))).toMatchObject({ ok: false, faults: [{ message: expect.stringContaining('million characters') as string }] }));
});

describe('all faults come at once, with path and cure', () => {
  test('wrong types, a misspelt word, a missing key', () => {
    const faults = faultsAfter((draft) => {
      draft.setups.sticks.frameRateHz = 'fast';
      draft.builds.camera.purpose = 'tripd';
      delete draft.kit.parts.body.name;
    });
    expect(faults).toMatchObject([
      { path: 'kit/parts/body/name', message: 'This is missing; it must be text.' },
      { path: 'builds/camera/purpose', cure: 'Did you mean "tripod"?' },
      { path: 'setups/sticks/frameRateHz', message: 'Found "fast"; it must be a number.' },
    ]);
  });

  test.each<[string, (draft: Draft) => void, string, RegExp]>([
    ['a part that is not there', (draft) => (draft.builds.camera.pieces.body.of = 'bdy'), 'builds/camera/pieces/body/of', /Did you mean "body"/],
    ['a port that is not there', (draft) => (draft.builds.camera.lines.picture.from = 'body/sdi-ot'), 'builds/camera/lines/picture/from', /Did you mean "sdi-out"/],
    ['a piece that is not there', (draft) => (draft.builds.camera.lines.picture.to = 'monitr/sdi-in'), 'builds/camera/lines/picture/to', /Did you mean "monitor"/],
    ['a glass piece that is not there', (draft) => draft.glasses.normal.stack.push('blok'), 'glasses/normal/stack/3', /Did you mean "block"/],
    ['a setup that is not there', (draft) => (draft.shots.portrait.setup = 'stiks'), 'shots/portrait/setup', /Did you mean "sticks"/],
    ['a mode that is not there', (draft) => (draft.setups.sticks.mode = 'opengate'), 'setups/sticks/mode', /Did you mean "open-gate"/],
    ['shots that wait for each other', (draft) => (draft.shots.portrait.after = ['portrait']), 'shots', /"after"/],
    ['keyframes that run backwards', (draft) => (draft.shots.portrait.subject[1].atS = 0), 'shots/portrait/subject/1/atS', /forward/],
    ['a lens of a kilometre', (draft) => (draft.kit.parts['taking-58'].lens.focalLengthMm = 1e8), 'kit/parts/taking-58/lens/focalLengthMm', /check the unit/],
    ['a T-stop of a ten-thousandth', (draft) => (draft.shots.portrait.tStop = 0.0001), 'shots/portrait/tStop', /are believed/],
    ['a camera of a billionth of a frame a second', (draft) => (draft.setups.sticks.frameRateHz = 1e-9), 'setups/sticks/frameRateHz', /are believed/],
    ['a sensor ten kilometres wide', (draft) => (draft.kit.parts.body.body.modes['open-gate'].sensorWidthMm = 1e7), 'kit/parts/body/body/modes/open-gate/sensorWidthMm', /From 0\.5 to 500 are believed/],
    ['a focal length of atoms', (draft) => (draft.kit.parts['taking-58'].lens.focalLengthMm = 1e-7), 'kit/parts/taking-58/lens/focalLengthMm', /are believed/],
    ['bounds that cross', (draft) => (draft.kit.parts.body.massG = { value: 5, low: 6 }), 'kit/parts/body/massG', /Low must not/],
    ['a piece of a part that only JavaScript knows', (draft) => (draft.builds.camera.pieces.body.of = 'toString'), 'builds/camera/pieces/body/of', /Known: /],
    ['a port fed by a port that only JavaScript knows', (draft) => (draft.kit.parts['pack-98'].ports['tap-1'].power.from = 'toString'), 'kit/parts/pack-98/ports/tap-1', /Known: /],
    ['a part with a key that no edit can reach', (draft) => (draft.kit.parts.constructor = draft.kit.parts.body), 'kit/parts/constructor', /not the word constructor/],
    ['a glass that stands in a setup twice', (draft) => (draft.setups.sticks.glasses = ['normal', 'normal']), 'setups/sticks/glasses/1', /stands here twice/],
    ['a piece that stands in the stack twice', (draft) => draft.glasses.normal.stack.push('lens'), 'glasses/normal/stack/3', /stands here twice/],
    ['a camera build that is its own station', (draft) => (draft.setups.sticks.stations = ['camera']), 'setups/sticks/stations', /no station too/],
    ['a point fixed to itself', (draft) => (draft.glasses.normal.joints.odd = { a: 'block/rear', b: 'block/rear' }), 'glasses/normal/joints/odd', /cannot be fixed to itself/],
    ['a piece fixed to itself', (draft) => (draft.glasses.normal.joints.odd = { a: 'block/rear', b: 'block/front' }), 'glasses/normal/joints/odd', /on the same piece/],
    ['two points joined twice, the other way round', (draft) => (draft.glasses.normal.joints.odd = turnedRound(draft.glasses.normal.joints['block-seat'])), 'glasses/normal/joints/odd', /joined already, by glasses\/normal\/joints\/block-seat/],
    ['a box with a side of less than nothing', (draft) => (draft.kit.parts.body.solids = [{ shape: 'box', sizeMm: [100, -80, 90] }]), 'kit/parts/body/solids/0/sizeMm/1', /no side of -80 mm/],
    ['a tube that is all bore', (draft) => (draft.kit.parts.body.solids = [{ shape: 'tube', diameterMm: 80, boreMm: 80, lengthMm: 9, along: 'z' }]), 'kit/parts/body/solids/0/boreMm', /no bore of 80 mm/],
    ['a rod that is all bore', (draft) => (draft.kit.parts.body.beam = { outerMm: 15, innerMm: { value: 20, basis: 'measured' }, lengthMm: 300, material: 'steel' }), 'kit/parts/body/beam/innerMm', /A rod of 15 mm has no bore of 20 mm/],
    ['a face wider inside than outside', (draft) => (draft.kit.parts.body.points.base.contactMm = [15, 4]), 'kit/parts/body/points/base/contactMm', /from 15 to 4 mm is no ring/],
    ['nothing, where something is divided by it', (draft) => (draft.assumptions = { 'mechanics.nutFactor': 0 }), 'assumptions/mechanics.nutFactor', /Found 0/],
    ['a point that faces nowhere', (draft) => (draft.kit.parts.body.points.base.out = [0, 0, 0]), 'kit/parts/body/points/base/out', /is no direction/],
    ['a point whose up runs along its out', (draft) => Object.assign(draft.kit.parts.body.points.base, { out: [0, -1, 0], up: [0, 2, 0] }), 'kit/parts/body/points/base/up', /runs along "out"/],
    ['a plate that starts with a lens for a pack', (draft) => (draft.builds.camera.pieces.pack.packs = ['taking-58']), 'builds/camera/pieces/pack/packs/0', /no battery pack/],
    ['feet and inches', (draft) => (draft.shots.portrait.subject[0].distanceMm = `5'6"`), 'shots/portrait/subject/0/distanceMm', /Write 1676\.4: it stands in mm here\./],
    ['pounds in a measured figure', (draft) => (draft.kit.parts.body.massG = { value: '4 lb', basis: 'measured' }), 'kit/parts/body/massG/value', /Write 1814\.369: it stands in g here\./],
    ['a copy’s figure in inches', (draft) => (draft.kit.copies = { mine: { of: 'taking-58', figures: { lengthMm: '2 in' } } }), 'kit/copies/mine/figures/lengthMm', /Write 50\.8: it stands in mm here\./],
    ['a key that a glass and its build both use', (draft) => (draft.builds.camera.pieces.lens = { of: 'monitor' }), 'glasses/normal/pieces/lens', /\(builds\/camera\/pieces\/lens\).*Give one of the two another key/],
    ['packs on a monitor', (draft) => (draft.builds.camera.pieces.monitor.packs = ['pack-98']), 'builds/camera/pieces/monitor/packs', /no battery plate/],
    ['a name that would move the cursor', (draft) => (draft.kit.parts.body.name = 'Body\u001B[31m'), 'kit/parts/body/name', /control characters/],
    ['a name that turns the writing round', (draft) => (draft.title = 'Day \u202Eone'), 'title', /control characters/],
    ['half a letter', (draft) => (draft.title = 'Day \uD83D'), 'title', /control characters/],
    ['a version in quotes', (draft) => (draft.version = '0'), 'version', /^Found "0"; allowed: 0\. $/],
    ['a point that stands at the moon', (draft) => (draft.kit.parts.body.points.base.at[1] = 3.8e11), 'kit/parts/body/points/base/at/1', /are believed/],
    ['a billion packs', (draft) => (draft.kit.parts['pack-98'].count = 1e9), 'kit/parts/pack-98/count', /are believed/],
    ['a block that squeezes by a billionth', (draft) => (draft.kit.parts['block-1-5'].block.squeeze = 1e-9), 'kit/parts/block-1-5/block/squeeze', /are believed/],
    ['a figure of a copy without a value', (draft) => (draft.kit.copies = { mine: { of: 'taking-58', figures: { massG: { plusMinus: 5, basis: 'measured' } } } }), 'kit/copies/mine/figures/massG/value', /This is missing/],
    ['a copy with a negative torque', (draft) => (draft.kit.copies = { mine: { of: 'focuser', figures: { 'focus/ringTorqueNm': -0.2 } } }), 'kit/copies/mine/figures/focus/ringTorqueNm', /more than 0/],
    ['an assumption in words', (draft) => (draft.assumptions = { 'sight.acuityArcmin': 'sharp' }), 'assumptions/sight.acuityArcmin', /a number/],
    ['an empty list', (draft) => (draft.setups.sticks.glasses = []), 'setups/sticks/glasses', /Found an empty list; it must hold at least 1 entry/],
    ['an empty name', (draft) => (draft.kit.parts.body.name = ''), 'kit/parts/body/name', /Found an empty text/],
    ['a number that no computer holds', (draft) => (draft.setups.sticks.frameRateHz = Infinity), 'setups/sticks/frameRateHz', /too large to hold/],
    ['a colder day than there is', (draft) => (draft.days.one.temperatureC = -300), 'days/one/temperatureC', /Celsius/],
    ['a name that cannot be a key', (draft) => (draft.setups['a b'] = draft.setups.sticks), 'setups/a b', /letters, digits/],
  ])('%s', (_what, change, path, words) => {
    const fault = faultsAfter(change).find((one) => one.path === path);
    expect(`${fault?.message} ${fault?.cure ?? ''}`).toMatch(words);
  });
});

test('a typical class that is none is told, with the nearest or those of its kind, and stops nothing', () => {
  const draft = JSON.parse(tinyText) as Draft;
  draft.kit.parts.body.typical = 'body-ful-frame';
  draft.kit.parts.focuser.typical = 'front glass';
  const read = checkShoot(draft);
  expect(read).toMatchObject({ ok: true, warnings: [{ path: 'kit/parts/body/typical', cure: 'Did you mean "body-full-frame"?' }, { path: 'kit/parts/focuser/typical', cure: expect.stringMatching(/^Classes of this kind: .*variable-diopter/) as string }] });
});

test('an unknown key is kept, reported, and offered the nearest name', () => {
  const draft = JSON.parse(tinyText) as Draft;
  draft.kit.parts.body.masG = 12;
  const read = checkShoot(draft);
  expect(read).toMatchObject({ ok: true, warnings: [{ path: 'kit/parts/body/masG', cure: 'Did you mean "massG"?' }] });
  expect(read.ok && writeShoot(read.value)).toContain('"masG": 12');
});

test('a camera’s mode in a build is reported with its path: the setup says what is recorded', () => {
  const draft = JSON.parse(tinyText) as Draft;
  draft.builds.camera.pieces.body.mode = 'open-gate';
  expect(checkShoot(draft)).toMatchObject({ ok: true, warnings: [{ path: 'builds/camera/pieces/body/mode', cure: expect.stringContaining('setup') as string }] });
});

test('a newer file is refused in words; older ones are brought up step by step', () => {
  expect(readShoot(tinyText.replace('"version": 0', '"version": 7'))).toMatchObject({ ok: false, faults: [{ path: 'version', cure: expect.stringContaining('Update') as string }] });
  const steps = { 0: (file: Record<string, unknown>) => ({ ...file, version: 1, added: true }), 1: (file: Record<string, unknown>) => ({ ...file, version: 2 }) };
  expect(migrate({ version: 0 }, steps, 2)).toMatchObject({ ok: true, value: { version: 2, added: true } });
  expect(migrate({ version: 0 }, {}, 2)).toMatchObject({ ok: false });
});

test('writing is stable and order of making does not show', () => {
  const shoot = tinyShoot();
  const text = writeShoot(shoot);
  const again = readShoot(text);
  expect(again.ok && writeShoot(again.value)).toBe(text);
  const { title, format, ...rest } = shoot;
  expect(writeShoot({ ...rest, title, format })).toBe(text);
});

test('a kit file is read alone', () => {
  const parts = tinyShoot().kit.parts;
  expect(readKit(JSON.stringify({ format: 'setworthy kit', version: 0, title: 'Shelf', parts }))).toMatchObject({ ok: true });
  expect(readKit(tinyText)).toMatchObject({ ok: false, faults: [{ path: 'format' }] });
});

test('names of any script, joined letters and flags are names', () => {
  for (const title of ['日本語', 'ณั้', 'مشهد \u200Fليلي', '👩‍👩‍👧', 'a\u0301', 'x'.repeat(200)]) expect(faultsAfter((draft) => (draft.title = title)), title).toEqual([]);
});

test('twenty thousand wrong names in a kit of three thousand parts are told in bounded time', () => {
  const faults = faultsAfter((draft) => {
    for (let at = 0; at < 3000; at++) draft.kit.parts[`part-${at}`] = { name: `Part ${at}`, kind: 'rod' };
    for (let at = 0; at < 20_000; at++) draft.builds.camera.pieces[`piece-${at}`] = { of: `nowhere-near-${at}` };
  });
  expect(faults.length).toBeGreaterThanOrEqual(20_000);
});

describe('what is stated away from its place', () => {
  test('a figure of a copy, and an assumption, that name nothing are reported and kept', () => {
    const draft = JSON.parse(tinyText) as Draft;
    draft.kit.copies = { mine: { of: 'focuser', figures: { 'focus/ringTorqeNm': 0.2, 'constructor': 1 } } };
    draft.assumptions = { 'sight.acuityArcmn': 1 };
    expect(checkShoot(draft)).toMatchObject({
      ok: true,
      warnings: [
        { path: 'kit/copies/mine/figures/focus/ringTorqeNm', message: expect.stringContaining('changes nothing') as string }, { path: 'kit/copies/mine/figures/constructor' },
        { path: 'assumptions/sight.acuityArcmn', cure: 'Did you mean "sight.acuityArcmin"?' },
      ],
    });
  });

  test('a path through ports and modes leads somewhere', () => {
    const draft = JSON.parse(tinyText) as Draft;
    draft.kit.copies = { mine: { of: 'body', figures: { 'body/modes/open-gate/outputs/sdi-out/delayMs': 38, 'ports/dc-in/power/highV': 17 } } };
    expect(checkShoot(draft)).toMatchObject({ ok: true, warnings: [] });
  });
});
