import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { dayOfPacks } from './dayOfPacks.ts';

type Day = Parameters<typeof dayOfPacks>[0];
type Kind = Day['packs'][number];
type Segment = Day['segments'][number];

const cell = [[0, 3], [0.05, 3.42], [0.1, 3.54], [0.2, 3.62], [0.4, 3.7], [0.6, 3.82], [0.8, 3.98], [1, 4.2]] as const;
const plate: Kind = {
  name: 'plate', count: 3, openCircuitV: cell.map(([soc, v]): [number, number] => [soc, 4 * v]), capacityAh: 6.8, internalOhm: 0.12, cutoffV: 12,
  charge: 1, chargeHours: 4,
};
/** 100 Wh whatever the load. */
const even: Kind = { name: 'even', count: 1, openCircuitV: [[0, 10], [1, 10]], capacityAh: 10, internalOhm: 0, cutoffV: 5, charge: 1,
  chargeHours: 2 };
const pause = (minutes: number, loadW = 50): Segment => ({ hours: minutes / 60, loadW, take: false, chargerOn: true });
const take = (minutes: number, loadW = 50): Segment => ({ hours: minutes / 60, loadW, take: true, chargerOn: true });
const plan = (packs: Kind[], segments: Segment[], more: Partial<Day> = {}): Day =>
  ({ packs, segments, darkPerChangeS: 0, reserveMin: 0, chargerBays: 0, ...more });

/** Ten hours of setting up and shooting, 12 minutes between takes of 4, lunch off after five hours. */
const shootingDay = [...Array.from({ length: 19 }, () => [pause(12, 55), take(4, 70)]).flat(), pause(56, 0),
  ...Array.from({ length: 17 }, () => [pause(12, 55), take(4, 70)]).flat()];

describe('by hand, 100 Wh packs at 50 W: two hours each', () => {
  test('a pause before the pack is empty is used as late as the takes allow', () => {
    // The pause runs from 1 h 50 to 1 h 55; the take after it would end at 2 h 25. With 2 min of darkness the change starts at 1 h 53.
    const { events, changes, darkMin, takesLost } = dayOfPacks(plan([{ ...even, count: 2 }], [take(110), pause(5), take(30)],
      { darkPerChangeS: 120 }));
    expect(events).toHaveLength(1);
    expect(events[0]).toMatchObject({ kind: 'change', off: 'even 1', on: 'even 2', atHours: expect.closeTo(113 / 60, 9),
      darkMin: expect.closeTo(2, 9) });
    expect(events[0]?.offHoursLeft).toBeCloseTo(7 / 60, 9);
    expect(events[0]?.onHours).toBeCloseTo(2, 9);
    expect([changes, darkMin, takesLost]).toEqual([1, expect.closeTo(2, 9), 0]);
  });

  test('a take longer than a pack goes dark at two hours, till its end, and the change comes then', () => {
    const { events, takesLost, darkMin } = dayOfPacks(plan([{ ...even, count: 2 }], [take(150), pause(10)]));
    expect(events.map(({ kind, atHours }) => [kind, atHours])).toEqual([['died in a take', expect.closeTo(2, 9)],
      ['change', expect.closeTo(2.5, 9)]]);
    expect([takesLost, darkMin]).toEqual([1, expect.closeTo(30, 6)]);
  });

  test('a change that takes longer than the pause runs into the take, and that is said', () => {
    const { takesLost, darkMin, events } = dayOfPacks(plan([{ ...even, count: 2 }], [take(115), pause(1), take(30)], { darkPerChangeS: 180 }));
    expect(events[0]?.atHours).toBeCloseTo(115 / 60, 9);
    expect([takesLost, darkMin]).toEqual([1, expect.closeTo(3, 6)]);
  });

  test('with nothing left it stays dark till wrap, and with a charger till the first pack is full', () => {
    const bare = dayOfPacks(plan([even], [pause(240)]));
    expect(bare.events.map(({ kind }) => kind)).toEqual(['no pack left']);
    expect(bare.darkMin).toBeCloseTo(120, 6);
    // The first, off at 2 h, is full again at 4 h, when the second is empty: it never goes dark.
    const fed = dayOfPacks(plan([{ ...even, count: 2 }], [pause(480)], { chargerBays: 1 }));
    expect(fed.events.map(({ kind, on }) => [kind, on])).toEqual([['change', 'even 2'], ['change', 'even 1'], ['change', 'even 2']]);
    expect([fed.darkMin, fed.chargerTurns, fed.packsUsed]).toEqual([expect.closeTo(0, 6), 3, 2]);
    // Without mains in the afternoon, the second round never comes.
    const noMains = dayOfPacks(plan([{ ...even, count: 2 }], [pause(120), { ...pause(360), chargerOn: false }], { chargerBays: 1 }));
    expect(noMains.darkMin).toBeCloseTo(240, 6);
  });

  test('mixed packs: the one that lasts longest goes on first, a small one is used when it is the best there is', () => {
    const small: Kind = { ...even, name: 'small', capacityAh: 2 };
    const { events, packsUsed } = dayOfPacks(plan([small, even], [pause(140)]));
    expect(events.map(({ off, on, atHours }) => [off, on, atHours])).toEqual([['even', 'small', expect.closeTo(2, 9)]]);
    expect(packsUsed).toBe(2);
  });

  test('the reserve brings a change forward that would have been cut fine', () => {
    const day = [take(100), pause(5), take(14)];
    expect(dayOfPacks(plan([{ ...even, count: 2 }], day)).changes).toBe(0);
    expect(dayOfPacks(plan([{ ...even, count: 2 }], day, { reserveMin: 5 })).changes).toBe(1);
  });

  test('while it is off at lunch a change costs no darkness', () => {
    const { darkMin, changes } = dayOfPacks(plan([{ ...even, count: 2 }], [take(115), pause(30, 0), take(30)], { darkPerChangeS: 300 }));
    expect([changes, darkMin]).toEqual([1, 0]);
  });

  test('a pack that died under a heavy load feeds a light one again', () => {
    const weak: Kind = { ...even, internalOhm: 1, cutoffV: 8 };
    // 20 W pull it down to 7.24 V, below cut-off; 10 W leave it at 8.87 V.
    const { events, darkMin } = dayOfPacks(plan([weak], [pause(10, 20), pause(30, 10)]));
    expect(events.map(({ kind }) => kind)).toEqual(['no pack left']);
    expect(darkMin).toBeCloseTo(10, 6);
  });
});

/** The pack of a name, as it was at the hour it came on, run down second by second with Ohm's law: the independent check. */
function secondBySecond(day: Day): { diedAtHours: number | undefined; lowestV: number } {
  const { events } = dayOfPacks(day);
  let soc = 1;
  let clockS = 0;
  let lowestV = Infinity;
  const changesS = events.filter(({ kind }) => kind === 'change').map(({ atHours, darkMin }) => [atHours * 3600, darkMin * 60] as const);
  for (const { hours, loadW } of day.segments) {
    for (let i = 0; i < Math.round(hours * 3600); i += 1, clockS += 1) {
      const change = changesS[0];
      if (change !== undefined && clockS >= change[0] - 0.5) {
        soc = 1;
        changesS.shift();
      }
      const dark = events.some(({ atHours, darkMin }) => clockS >= atHours * 3600 && clockS < atHours * 3600 + darkMin * 60);
      if (loadW === 0 || dark) continue;
      const above = cell.findIndex(([at]) => at >= soc);
      const [[s0, v0], [s1, v1]] = [cell[above - 1] ?? cell[0], cell[Math.max(above, 1)] ?? cell[1]];
      const restV = 4 * (v0 + ((v1 - v0) * (soc - s0)) / (s1 - s0));
      const loadV = (restV + Math.sqrt(restV * restV - 4 * loadW * 0.12)) / 2;
      lowestV = Math.min(lowestV, loadV);
      if (loadV < 11.98) return { diedAtHours: clockS / 3600, lowestV };
      soc -= loadW / loadV / 6.8 / 3600;
    }
  }
  return { diedAtHours: undefined, lowestV };
}

test('a whole day replayed second by second: no pack is below cut-off while it is on', () => {
  const day = plan([{ ...plate, count: 8 }], shootingDay, { darkPerChangeS: 45, reserveMin: 2 });
  const { changes, takesLost, darkMin } = dayOfPacks(day);
  expect(changes).toBeGreaterThan(4);
  expect([takesLost, darkMin]).toEqual([0, expect.closeTo(changes * 0.75, 3)]);
  expect(secondBySecond(day)).toMatchObject({ diedAtHours: undefined, lowestV: expect.closeTo(12.1, 0) });
});

const segments = fc.array(fc.record({ hours: fc.double({ min: 0.01, max: 1, noNaN: true }), loadW: fc.constantFrom(0, 20, 60, 110),
  take: fc.boolean(), chargerOn: fc.boolean() }), { minLength: 1, maxLength: 40 });
property.prop([segments, fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 300 })])(
  'packs are changed outside takes only, energy does not come from nowhere, and darkness fits in the day',
  (list, count, chargerBays, darkPerChangeS) => {
    const { events, darkMin, takesLost, chargerTurns, packsUsed } = dayOfPacks(plan([{ ...plate, count }], list,
      { chargerBays, darkPerChangeS, reserveMin: 1 }));
    const starts = list.map((_, i) => list.slice(0, i).reduce((sum, { hours }) => sum + hours, 0));
    for (const event of events) {
      const i = starts.findLastIndex((start) => start <= event.atHours + 1e-9);
      const atBoundary = Math.abs((starts[i] ?? 0) - event.atHours) < 1e-6;
      if (event.kind === 'change') expect(list[i]?.take === false || atBoundary).toBe(true);
      if (event.kind === 'died in a take') expect(list[i]?.take === true || atBoundary).toBe(true);
    }
    const wantedHours = list.reduce((sum, { hours, loadW }) => sum + (loadW > 0 ? hours : 0), 0);
    expect(darkMin / 60).toBeLessThanOrEqual(wantedHours + 1e-9);
    const wantedWh = list.reduce((sum, { hours, loadW }) => sum + hours * loadW, 0);
    expect(wantedWh - (darkMin / 60) * 110).toBeLessThanOrEqual((count + chargerTurns) * 4 * 4.2 * 6.8);
    expect(events.reduce((sum, one) => sum + one.darkMin, 0)).toBeCloseTo(darkMin, 6);
    expect(takesLost).toBeLessThanOrEqual(list.filter(({ take: isTake }) => isTake).length);
    expect(packsUsed).toBeLessThanOrEqual(count);
  },
);

test('broken days are faults with their place, and absurd ones end', () => {
  expect(dayOfPacks.answer({ ...plan([plate], [pause(10)]), segments: [] })).toMatchObject({ ok: false, faults: [{ path: 'segments' }] });
  expect(dayOfPacks.answer(plan([{ ...plate, openCircuitV: [[0.2, 10], [1, 12]] }], [pause(10)]))).toMatchObject({ ok: false,
    faults: [{ path: 'packs/0/openCircuitV' }] });
  expect(dayOfPacks.answer(plan([plate], [{ ...pause(10), loadW: -5 }]))).toMatchObject({ ok: false, faults: [{ path: 'segments/0/loadW' }] });
  const tiny = { ...even, count: 2, capacityAh: 0.2, chargeHours: 0.001 };
  expect(dayOfPacks.answer(plan([tiny], [pause(60 * 900)], { chargerBays: 2 }))).toMatchObject({ ok: false, faults: [{ path: 'segments' }] });
  expect(dayOfPacks(plan([plate], [pause(10, 1e9)]))).toMatchObject({ changes: 0, darkMin: expect.closeTo(10, 6) });
});
