import { describe, expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { wiredShoot } from '../../../../test/wiredShoot.ts';
import { carriage } from './carriage.ts';

const scene = (nominalV: number, capacityAh: number, count: number, more: object = {}, flies = true) =>
  wiredShoot({ parts: { 'pack-98': { name: 'Pack', kind: 'battery', count, pack: { nominalV, capacityAh, ...more } } }, pieces: {} }, (draft) => { draft.days.one.flies = flies; });
const verdict = (...given: Parameters<typeof scene>) => askOne(carriage, scene(...given)).verdict;

describe('IATA Dangerous Goods Regulations, 67th edition, 2026 (second-hand); one person in the crew', () => {
  test.each([
    ['12.5 V × 8 Ah, exactly 100.00 Wh', 12.5, 8, 20, 'good'], ['100.01 Wh wants the approval of the airline', 10, 10.001, 2, 'tight'], ['21 spares to 100 Wh are one too many', 14.4, 6.8, 21, 'fails'],
    ['three of 147 Wh are one too many', 14.4, 10.2, 3, 'fails'], ['160.00 Wh', 16, 10, 2, 'tight'], ['over 160 Wh: not with a passenger', 14.4, 13.2, 1, 'fails'],
  ])('%s', (_, volts, ah, count, expected) => expect(verdict(volts, ah, count)).toBe(expected));
  test('a pack with outlets may count as a power bank: open, so it is warned', () => expect(askOne(carriage, scene(14.4, 6.8, 3, { outlets: true }))).toMatchObject({ verdict: 'tight', notes: expect.arrayContaining([expect.stringContaining('Ask the airline')]) as string[] }));
  test('a day that does not fly is not asked', () => expect(askAll(carriage, scene(14.4, 6.8, 3, {}, false))).toEqual([]));
});
