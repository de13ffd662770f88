import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { COAX_CLASSES } from '../../standards/coaxClasses.ts';
import { sdiLevel } from '../../standards/sdiLevels.ts';
import { coaxReach } from './coaxReach.ts';

const loss = [{ atMHz: 742.5, dbPer100m: 17.7 }, { atMHz: 1485, dbPer100m: 25.64 }];

test('the published cable: fit of 17.70 and 25.64 dB/100 m goes through both', () => {
  expect(coaxReach({ rateGbps: 1.485, loss, budgetDb: 20 }).lossDbPer100m).toBeCloseTo(17.7, 9);
  expect(coaxReach({ rateGbps: 2.97, loss, budgetDb: 20 }).lossDbPer100m).toBeCloseTo(25.64, 9);
});

test('at 12G it runs 72.1 m (derived from unrounded losses, k1 0.61128 and k2 0.0014041; the printed ones give that to a tenth of a percent)', () => {
  expect(coaxReach({ rateGbps: 11.88, loss, budgetDb: 40 }).reachM / (4000 / (0.61128 * Math.sqrt(5940) + 0.0014041 * 5940))).toBeCloseTo(1, 3);
  expect(Math.abs(coaxReach({ rateGbps: 11.88, loss, budgetDb: 40 }).reachM - 72.1)).toBeLessThan(0.1);
});

test('one point goes by the root: RG-59, 1.79 dB/100 ft at 30 MHz, gives 4.00 at 150 where ARRL prints 4.11', () => {
  const rg59 = [{ atMHz: 30, dbPer100m: 1.79 / 0.3048 }];
  expect(coaxReach({ rateGbps: 0.3, loss: rg59, budgetDb: 20 }).lossDbPer100m * 0.3048).toBeCloseTo(4.0, 2);
});

test('a camera lead reaches, and a drum of the thinnest does not, at 12G: common practice', () => {
  const reach = (name: string, level: string) => {
    const { rateGbps, budgetDb } = sdiLevel(level) ?? { rateGbps: 0, budgetDb: { value: 0 } };
    return coaxReach({ rateGbps, budgetDb: budgetDb.value, loss: COAX_CLASSES.find((one) => one.name === name)?.loss ?? [] }).reachM;
  };
  expect(reach('extra thin', '12G')).toBeGreaterThan(10);
  expect(reach('extra thin', '12G')).toBeLessThan(40);
  expect(reach('low-loss', 'HD')).toBeGreaterThan(100);
  const reaches = COAX_CLASSES.map(({ name }) => reach(name, '3G'));
  expect(reaches).toEqual(reaches.toSorted((a, b) => a - b));
});

const k = fc.double({ min: 0.05, max: 3, noNaN: true });
property.prop([k, fc.double({ min: 0, max: 0.01, noNaN: true }), fc.uniqueArray(fc.integer({ min: 10, max: 6000 }), { minLength: 2, maxLength: 8 })])(
  'points that lie on k1·√f + k2·f are met wherever it is asked',
  (k1, k2, frequencies) => {
    const at = (atMHz: number) => k1 * Math.sqrt(atMHz) + k2 * atMHz;
    const points = frequencies.map((atMHz) => ({ atMHz, dbPer100m: at(atMHz) }));
    const { lossDbPer100m, reachM } = coaxReach({ rateGbps: 2.97, loss: points, budgetDb: 30 });
    expect(lossDbPer100m / at(1485)).toBeCloseTo(1, 5);
    expect((reachM * at(1485)) / 3000).toBeCloseTo(1, 5);
  },
);

test('points at one frequency, and points that fall with it, are faults', () => {
  const twice = [{ atMHz: 100, dbPer100m: 5 }, { atMHz: 100, dbPer100m: 6 }];
  expect(coaxReach.answer({ rateGbps: 1.485, loss: twice, budgetDb: 20 })).toMatchObject({ ok: false, faults: [{ path: 'loss' }] });
  const falling = [{ atMHz: 100, dbPer100m: 50 }, { atMHz: 200, dbPer100m: 1 }];
  expect(coaxReach.answer({ rateGbps: 11.88, loss: falling, budgetDb: 20 })).toMatchObject({ ok: false, faults: [{ path: 'loss' }] });
  expect(coaxReach.answer({ rateGbps: 1.485, loss: [{ atMHz: 100, dbPer100m: -1 }], budgetDb: 20 })).toMatchObject({ ok: false,
    faults: [{ path: 'loss/0/dbPer100m' }] });
});
