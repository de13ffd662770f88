import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { dc, pack as aPack, screen, wiredShoot } from '../../../../test/wiredShoot.ts';
import { pack } from './pack.ts';

const scene = (watts: number, more: object = {}, cable: object = {}) =>
  wiredShoot({ parts: { pack: aPack(more), screen: screen({ 'dc-in': dc() }, { draw: { typicalW: watts } }), lead: { name: 'Lead', kind: 'cable', cable: { carries: 'power', lengthMm: 10, areaMm2: 10, ends: [{ connector: '2-pin tap', sex: 'male' }, { connector: '2-pin tap', sex: 'male' }], ...cable } } }, pieces: { pack: { of: 'pack' }, screen: { of: 'screen' } }, lines: { a: ['pack/tap-1', 'screen/dc-in', 'lead'] } }, (draft) => { draft.assumptions = { 'power.contactOhm': 0 }; });

test('120 W at 12 V are 10 A of 12', () => expect(askOne(pack, scene(120))).toMatchObject({ verdict: 'good', use: expect.closeTo(10 / 12, 2) as number }));
test('160 W overload it', () => expect(askOne(pack, scene(160)).verdict).toBe('fails'));
test('a load no voltage can feed through its cable is an answer', () => expect(askOne(pack, scene(200, {}, { lengthMm: 20_000, areaMm2: 0.5 }))).toMatchObject({ verdict: 'fails', says: 'What hangs on Pack is more than its cables can carry from Pack.' }));
test('a draw that is not entered is named', () => {
  const shoot = wiredShoot({ parts: { pack: aPack(), screen: screen({ 'dc-in': dc() }, { draw: undefined }) }, pieces: { pack: { of: 'pack' }, screen: { of: 'screen' } }, lines: { a: ['pack/tap-1', 'screen/dc-in'] } }, (draft) => { delete draft.kit.parts.screen.draw; });
  expect(askOne(pack, shoot)).toMatchObject({ unknown: 'not entered', missing: [{ says: 'power in use of Screen' }] });
});
