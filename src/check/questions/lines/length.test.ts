import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { coax, hdmi, screen, sdi, wiredShoot } from '../../../../test/wiredShoot.ts';
import { length } from './length.ts';

const run = (lengthM: number, coaxClass: string | null, more: { heightPx?: number; rate?: number; budgetDb?: number } = {}) => {
  const { heightPx = 1080, rate = 25, budgetDb } = more;
  return wiredShoot(
    {
      parts: { screen: screen({ 'sdi-in': sdi('in', { level: '12G', ...(budgetDb === undefined ? {} : { budgetDb }) }) }), coax: coax(lengthM * 1000, coaxClass), short: coax(5000, 'low-loss') }, pieces: { screen: { of: 'screen' } },
      lines: { a: ['body/sdi-out', 'screen/sdi-in', 'coax'] }, sends: { widthPx: (heightPx * 16) / 9, heightPx }, frameRateHz: rate,
    },
    (draft) => { draft.kit.parts.body.ports['sdi-out'].video.level = '12G'; },
  );
};

test('2160p60 runs 72.1 m, 2160p30 106.7 m on the published low-loss cable with 40 dB (published: 106)', () => {
  const has = (rate: number) => askOne(length, run(50, 'low-loss', { heightPx: 2160, rate })).has?.amount.value;
  expect([has(60), has(30)]).toEqual([expect.closeTo(72.1, 0) as number, expect.closeTo(106.7, 1) as number]);
});
test('too long fails, and a shorter cable of the kit is the cure', () => {
  expect(askOne(length, run(80, 'low-loss', { heightPx: 2160, rate: 60 }))).toMatchObject({ verdict: 'fails', mends: [{ says: 'Coax 5 m instead', use: expect.closeTo(5 / 72.1, 3) as number }, expect.anything() as object] });
});
test('the receiver\'s own budget comes first', () => expect(askOne(length, run(50, 'low-loss', { heightPx: 2160, rate: 60, budgetDb: 20 })).has?.amount.value).toBeCloseTo(36.05, 1));
test('a class that is not entered matters for a long cable only', () => {
  expect(askOne(length, run(0.5, null)).verdict).toBe('good');
  expect(askOne(length, run(60, null))).toMatchObject({ verdict: 'unknown', unknown: 'not entered' });
});
test('HDMI: the usual length of a passive cable, assumed', () => {
  const shoot = wiredShoot({ parts: { screen: screen({ 'hdmi-in': hdmi('in') }), lead: { ...coax(10_000, null), cable: { carries: 'video', lengthMm: 10_000, ends: [{ connector: 'HDMI A', sex: 'male' }, { connector: 'HDMI A', sex: 'male' }] } } }, pieces: { screen: { of: 'screen' } }, lines: { a: ['body/hdmi', 'screen/hdmi-in', 'lead'] } }, (draft) => {
    draft.kit.parts.body.ports.hdmi = hdmi('out');
    draft.kit.parts.body.body.modes['open-gate'].outputs.hdmi = { live: true, widthPx: 1920, heightPx: 1080 };
  });
  expect(askOne(length, shoot)).toMatchObject({ verdict: 'fails', has: { amount: { value: 5, unit: 'm' } } });
});
