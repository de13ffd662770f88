import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { type Scene, coax, device, hdmi, receiver, screen, sdi, transmitter, wiredShoot } from '../../../test/wiredShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type Leg, legsOf } from './picture.ts';
import { videoTrace } from './videoTrace.ts';

function into(scene: Scene, piece: string): Leg {
  const leg = videoTrace(new Ledger(wiredShoot({ ...scene, parts: { coax: coax(500), ...scene.parts } })), 'sticks', 'normal').into.get(`camera/${piece}`);
  if (leg === undefined) throw new Error('no way there');
  return leg;
}
const direct = (video: object, sends: object, frameRateHz = 25): Leg =>
  into({ parts: { screen: screen({ 'sdi-in': sdi('in', video) }) }, pieces: { screen: { of: 'screen' } }, lines: { a: ['body/sdi-out', 'screen/sdi-in', 'coax'] }, sends, frameRateHz }, 'screen');
const reasons = ({ dark }: Leg): string[] => (dark?.kind === 'refused' ? dark.refusals.map(({ kind }) => kind) : [dark?.kind ?? 'arrives']);

describe('what passes a serial line (SMPTE ST 292-1, 424, 425-1, 2081-10, 2082-10)', () => {
  const uhd = { widthPx: 3840, heightPx: 2160 };
  test.each([
    ['1080p25 into HD', { level: 'HD' }, {}, 25, ['arrives']],
    ['1080p60 into HD', { level: 'HD' }, {}, 60, ['level']],
    ['1080p60 into 3G', { level: '3G' }, {}, 60, ['arrives']],
    ['1080p25 4:4:4 12 bit into HD: fits 3G only', { level: 'HD' }, { sampling: '4:4:4', bitDepth: 12 }, 25, ['level']],
    ['1080p25 4:4:4 12 bit into 3G', { level: '3G' }, { sampling: '4:4:4', bitDepth: 12 }, 25, ['arrives']],
    ['2160p30 out of a 3G socket', { level: '12G' }, uhd, 30, ['level']],
    ['level B where only A is taken', { mappings: ['level A'] }, { mapping: 'level B' }, 60, ['mapping']],
    ['level B at HD, where there are no levels', { mappings: ['level A'] }, { mapping: 'level B' }, 25, ['arrives']],
    ['segments into a progressive screen', { mappings: ['level A'] }, { segmented: true }, 25, ['mapping']],
    ['2048 wide into a list of 1920', { accepts: [{ widthPx: 1920, heightPx: 1080, ratesHz: [24, 25] }] }, { widthPx: 2048 }, 25, ['raster']],
    ['23.976 where only 24 is listed', { accepts: [{ widthPx: 1920, heightPx: 1080, ratesHz: [24] }] }, {}, 23.976, ['rate']],
    ['23.98 where 23.976 is listed', { accepts: [{ widthPx: 1920, heightPx: 1080, ratesHz: [23.976] }] }, {}, 23.98, ['arrives']],
    ['a raster that no standard has', {}, { widthPx: 1900, heightPx: 1000 }, 25, ['unknown raster']],
    ['a level nobody knows', { level: '5G' }, {}, 25, ['unknown level']],
    ['a dead output', {}, { live: false }, 25, ['dead output']],
  ])('%s', (_, video, sends, rate, expected) => expect(reasons(direct(video, sends, rate))).toEqual(expected));
});

const MODES = { fast: { name: 'fast', delayMs: 2, widthPx: 1280, heightPx: 720, maxFrameRateHz: 60 }, detailed: { name: 'detailed', delayMs: 90, widthPx: 1920, heightPx: 1080, maxFrameRateHz: 30 } };
const overAir = (tx: object, rx: object, more: Partial<Scene> = {}): Scene => ({
  parts: { tx: transmitter(MODES), rx: receiver(MODES), screen: screen({ 'sdi-in': sdi('in') }) },
  pieces: { tx: { of: 'tx', ...tx }, rx: { of: 'rx', ...rx }, screen: { of: 'screen' } },
  lines: { a: ['body/sdi-out', 'tx/sdi-in', 'coax'], b: ['rx/sdi-out', 'screen/sdi-in', 'coax'] }, ...more,
});

describe('over the air', () => {
  test('a fast mode leaves 720 lines, and delays add up: 40 + 2', () => {
    const leg = into(overAir({ mode: 'fast', net: 'a' }, { mode: 'fast', net: 'a' }), 'screen');
    expect(leg.picture).toMatchObject({ widthPx: 1280, heightPx: 720 });
    expect(legsOf(leg).reduce((sum, { delay }) => sum + (delay !== undefined && 'figure' in delay ? delay.figure.value : 0), 0)).toBe(42);
  });
  test.each([
    ['no net', { mode: 'fast', net: 'a' }, {}, 'no net'],
    ['nobody on the net', { mode: 'fast', net: 'b' }, { net: 'a' }, 'no transmitter'],
    ['one mode for all', { mode: 'fast', net: 'a' }, { mode: 'detailed', net: 'a' }, 'set to another mode'],
    ['several modes, none set', { net: 'a' }, { net: 'a' }, 'no mode set'],
  ])('%s', (_, tx, rx, expected) => expect(into(overAir(tx, rx), 'screen').dark?.kind).toBe(expected));
  test('a mode that sends too few frames', () => {
    expect(into(overAir({ mode: 'detailed', net: 'a' }, { net: 'a' }, { frameRateHz: 50 }), 'screen').dark?.kind).toBe('too many frames');
  });
});

test('an HDMI line without a fixed picture settles on the largest both ends list and carry (HDMI 1.4 carries 2160p25 in 4:2:2, not 2160p50)', () => {
  const list = (rate: number, ...heights: number[]) => heights.map((heightPx) => ({ widthPx: (heightPx * 16) / 9, heightPx, ratesHz: [rate] }));
  const height = (level: string, rate: number) => {
    const scene: Scene = { parts: { screen: screen({ 'hdmi-in': hdmi('in', { level, accepts: list(rate, 720, 1080, 2160) }) }) }, pieces: { screen: { of: 'screen' } }, lines: { a: ['body/hdmi', 'screen/hdmi-in'] }, frameRateHz: rate };
    const shoot = wiredShoot(scene, (draft) => {
      draft.kit.parts.body.ports.hdmi = hdmi('out', { accepts: list(rate, 2160, 1080) });
      draft.kit.parts.body.body.modes['open-gate'].outputs.hdmi = { live: true };
    });
    return videoTrace(new Ledger(shoot), 'sticks', 'normal').into.get('camera/screen')?.picture?.heightPx;
  };
  expect([height('2.0', 50), height('1.4', 50), height('1.4', 25)]).toEqual([2160, 1080, 2160]);
});

test('a circle of boxes, a box that says nothing and an input without plug are answers', () => {
  const box = (more: object = {}) => device('Box', { in: sdi('in'), out: sdi('out', { from: 'in' }) }, more);
  const scene: Scene = {
    parts: { a: box(), b: box(), mute: device('Mute', { 'in-1': sdi('in'), 'in-2': sdi('in'), out: sdi('out') }), screen: screen({ 'sdi-in': sdi('in') }) },
    pieces: { a: { of: 'a' }, b: { of: 'b' }, mute: { of: 'mute' }, screen: { of: 'screen' }, alone: { of: 'screen' }, fed: { of: 'screen' } },
    lines: { ab: ['a/out', 'b/in', 'coax'], ba: ['b/out', 'a/in', 'coax'], m: ['mute/out', 'screen/sdi-in', 'coax'] },
  };
  expect([into(scene, 'b').dark?.kind, into(scene, 'screen').dark?.kind, into(scene, 'alone').dark?.kind]).toEqual(['circle', 'passes nothing on', 'unfed']);
});

test('ten thousand ports in one chain are traced', () => {
  const count = 5000;
  const names = Array.from({ length: count }, (_, at) => `box-${at}`);
  const shoot = wiredShoot({
    parts: { box: device('Box', { in: sdi('in'), out: sdi('out', { from: 'in', delayMs: 1 }) }), coax: coax(500) },
    pieces: Object.fromEntries(names.map((name) => [name, { of: 'box' }])),
    lines: Object.fromEntries(names.map((name, at) => [`l-${at}`, [at === 0 ? 'body/sdi-out' : `box-${at - 1}/out`, `${name}/in`, 'coax'] as const])),
  });
  const last = videoTrace(new Ledger(shoot), 'sticks', 'normal').at.get(`camera/box-${count - 1}/out`);
  expect(last?.picture?.heightPx).toBe(1080);
  expect(legsOf(last as Leg)).toHaveLength(2 * count + 1);
}, 60_000);

property.prop([fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { maxLength: 8 })])('delays of a chain of boxes are their sum, whatever the order', (delays) => {
  const names = delays.map((_, at) => `box-${at}`);
  const leg = into({
    parts: Object.fromEntries([...delays.map((delayMs, at) => [`box-${at}`, device('Box', { in: sdi('in'), out: sdi('out', { from: 'in', delayMs }) })] as const), ['screen', screen({ 'sdi-in': sdi('in') })] as const]),
    pieces: Object.fromEntries([...names, 'screen'].map((name) => [name, { of: name }])),
    lines: Object.fromEntries([...names, 'screen'].map((name, at) => [`l-${at}`, [at === 0 ? 'body/sdi-out' : `box-${at - 1}/out`, name === 'screen' ? 'screen/sdi-in' : `${name}/in`, 'coax'] as const])),
  }, 'screen');
  const total = legsOf(leg).reduce((sum, { delay }) => sum + (delay !== undefined && 'figure' in delay ? delay.figure.value : 0), 0);
  expect(total).toBeCloseTo(40 + delays.reduce((sum, one) => sum + one, 0), 6);
});
