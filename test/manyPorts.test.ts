import { expect, test } from 'vitest';
import { Checker } from '../src/check/Checker.ts';
import { questions } from '../src/check/questions/index.generated.ts';
import { coax, dc, device, outlet, pack, screen, sdi, wiredShoot } from './wiredShoot.ts';

const asked = questions.filter(({ id }) => /^(lines|sight|power)\./.test(id));
const lead = { name: 'Tap lead', kind: 'cable', count: 9999, cable: { carries: 'power', lengthMm: 1, areaMm2: 100, ends: [{ connector: '2-pin tap', sex: 'male' }, { connector: '2-pin tap', sex: 'male' }] } };

/** `boxes` boxes in one chain of picture and supply, with four sockets each; the last feeds a screen. */
function chain(boxes: number) {
  const names = Array.from({ length: boxes }, (_, at) => `box-${at}`);
  const before = (at: number, first: string, port: string) => (at === 0 ? first : `box-${at - 1}/${port}`);
  return wiredShoot({
    parts: { coax: { ...coax(500), count: 9999 }, lead, pack: pack(), box: device('Box', { in: sdi('in'), out: sdi('out', { from: 'in', delayMs: 0 }), 'dc-in': dc({ lowV: 1 }), 'dc-out': outlet('dc-in') }, { draw: { typicalW: 0.001 } }), screen: screen({ 'sdi-in': sdi('in'), 'dc-in': dc({ lowV: 1 }) }) },
    pieces: { pack: { of: 'pack' }, ...Object.fromEntries(names.map((name) => [name, { of: 'box' }])), screen: { of: 'screen' } },
    lines: Object.fromEntries([...names, 'screen'].flatMap((name, at) => [[`p-${at}`, [before(at, 'body/sdi-out', 'out'), name === 'screen' ? 'screen/sdi-in' : `${name}/in`, 'coax'] as const], [`s-${at}`, [before(at, 'pack/tap-1', 'dc-out'), `${name}/dc-in`, 'lead'] as const]])),
  }, (draft) => {
    draft.needs.viewers = { one: { who: 'puller', job: 'pull focus', screen: 'camera/screen', distanceMm: 500 } };
    draft.assumptions = { 'power.contactOhm': 0 };
  });
}

test('every question on lines, sight and power answers ten thousand sockets in bounded time, without a number that is none', () => {
  const shoot = chain(2500);
  const start = performance.now();
  const answers = new Checker(shoot, asked).answers();
  expect(performance.now() - start).toBeLessThan(20_000);
  expect(answers.length).toBeGreaterThan(10_000);
  for (const { use, says, verdict } of answers) {
    expect(use === undefined || Number.isFinite(use)).toBe(true);
    expect(says).not.toMatch(/NaN|undefined|could not be worked out/);
    expect(['good', 'tight', 'fails', 'unknown']).toContain(verdict);
  }
}, 120_000);
