import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { dc, outlet, pack, screen, wiredShoot } from '../../../../test/wiredShoot.ts';
import { current } from './current.ts';

const lead = (more: object) => ({ name: 'Lead', kind: 'cable', count: 3, cable: { carries: 'power', lengthMm: 10, areaMm2: 10, ends: [{ connector: '2-pin tap', sex: 'male' }, { connector: '2-pin tap', sex: 'male' }], ...more } });
const scene = (draw: object, port: object, cable: object = {}, two = false) =>
  wiredShoot({
    parts: { pack: pack({}, { tap: outlet('pack', port) }), screen: screen({ 'dc-in': dc() }, { draw }), lead: lead(cable), splitter: { name: 'Splitter', kind: 'splitter', ports: { in: dc({ maxA: 4 }), a: outlet('in'), b: outlet('in') } } },
    pieces: { pack: { of: 'pack' }, splitter: { of: 'splitter' }, one: { of: 'screen' }, two: { of: 'screen' } },
    lines: { in: ['pack/tap', 'splitter/in', 'lead'], a: ['splitter/a', 'one/dc-in', 'lead'], ...(two ? { b: ['splitter/b', 'two/dc-in', 'lead'] as const } : {}) },
  }, (draft) => { draft.assumptions = { 'power.contactOhm': 0 }; });
const at = (line: string, ...given: Parameters<typeof scene>) => askOne(current, scene(...given), `camera/${line}`);

test('36 W at 12 V, the end of the pack, are 3 A against the rating of the tap', () => expect(at('in', { typicalW: 24, peakW: 36 }, { maxA: 3.5 })).toMatchObject({ verdict: 'good', needs: { amount: { value: expect.closeTo(3, 2) as number } }, has: { amount: { value: 3.5 } } }));
test('the usual 2 A against 80 % of a fuse (common practice): a 2.5 A fuse is full', () => expect(at('in', { typicalW: 24 }, { fuseA: 2.5 })).toMatchObject({ has: { amount: { value: 2 } }, use: expect.closeTo(1, 2) as number }));
test('a splitter\'s socket carries both branches, one branch its own', () => {
  const branch = at('a', { typicalW: 36 }, {}, { maxA: 5 }, true);
  expect([at('in', { typicalW: 36 }, {}, {}, true).verdict, branch.verdict, branch.needs?.amount.value]).toEqual(['fails', 'good', expect.closeTo(3, 2)]);
});
test('a cable without rating is judged by its gauge: 26 is run at 2.2 A at most (common practice)', () => expect(at('a', { typicalW: 36 }, {}, { areaMm2: undefined, awg: 26 })).toMatchObject({ verdict: 'fails', has: { amount: { value: 2.2 } } }));
