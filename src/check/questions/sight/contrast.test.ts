import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { contrast } from './contrast.ts';

const at = (illuminanceLux: number | undefined) =>
  tinyShoot((draft) => {
    Object.assign(draft.kit.parts['monitor-5'].screen, { whiteCdPerM2: 1000, blackCdPerM2: 1, reflectance: 0.01 });
    draft.needs.viewers['puller-sees'].illuminanceLux = illuminanceLux;
    if (illuminanceLux === undefined) delete draft.needs.viewers['puller-sees'].illuminanceLux;
  });

test('1000 cd/m², 1000 to one, 1 % thrown back: 31.43 at 10 000 lx, 4.129 at 100 000 lx (derived)', () => {
  expect([10_000, 100_000].map((lux) => askOne(contrast, at(lux)).has?.amount.value)).toEqual([expect.closeTo(31.43, 2) as number, expect.closeTo(4.129, 3) as number]);
  expect([10_000, 100_000].map((lux) => askOne(contrast, at(lux)).verdict)).toEqual(['good', 'fails']);
});
test('a hood down to what the cure says gives just the contrast wanted', () => {
  const says = askOne(contrast, at(100_000)).mends?.[0]?.says ?? '';
  const lux = Number(/([\d\s]+)\s*lx/u.exec(says)?.[1]?.replaceAll(/\s/g, ''));
  expect(askOne(contrast, at(lux)).has?.amount.value).toBeCloseTo(20, 1);
});
test('without a light of the viewer\'s own, that of the day counts', () => expect(askOne(contrast, at(undefined)).has?.from).toContain('500'));
