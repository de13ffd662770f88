import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { outsideFile } from '../../test/outsideTool.ts';
import { RADIO_CHANNELS, channelSpan, spansOverlap, usableChannels } from './radioChannels.ts';
import { RADAR_AVOIDANCE, RADIO_RULES, RADIO_RULES_AS_OF, RADIO_RULES_CAUTION, radioRule } from './radioRules.ts';

interface Limit {
  readonly country: string;
  readonly lowMHz: number;
  readonly highMHz: number;
  readonly dbm: number;
  readonly indoors: boolean;
  readonly radar: boolean;
}

const REGIONS: Readonly<Record<string, 'EU' | 'US'>> = { DE: 'EU', FR: 'EU', IT: 'EU', ES: 'EU', US: 'US' };

/** What the database says of a country must be what the rule here says, or less strict by no more than the note beside each line. */
function holds(limit: Limit): void {
  const inside = { lowMHz: limit.lowMHz + 1, highMHz: limit.highMHz - 1 };
  const rule = radioRule({ region: REGIONS[limit.country] ?? 'EU', ...inside });
  // 5850 to 5895 MHz in the US is for portable equipment under an access point only: no video link, so no rule here.
  if (limit.country === 'US' && limit.lowMHz === 5850) return expect(rule).toBeUndefined();
  expect(rule, JSON.stringify(limit)).toBeDefined();
  expect(rule?.radarAvoidance).toBe(limit.radar);
  expect(rule?.indoorsOnly).toBe(limit.indoors);
  // The US entry for 5150 to 5250 MHz rounds 23.98 dBm down to 23.
  expect(Math.abs((rule?.withoutPowerControlDbm ?? rule?.maxDbm ?? 0) - limit.dbm)).toBeLessThanOrEqual(limit.country === 'US' ? 1 : 0.05);
}

describe('against the wireless regulatory database of 2026.05.30', () => {
  const rows = readFileSync(new URL('../../reference/radio-rules/regdb-2026.05.30.txt', import.meta.url),
    'utf8').split('\n').filter((line) => /^[A-Z]/.test(line));
  test.each(rows)('%s', (row) => {
    const [country = '', low, high, dbm, indoors, radar] = row.split(' ');
    holds({ country, lowMHz: Number(low), highMHz: Number(high), dbm: Number(dbm), indoors: indoors === 'indoors', radar: radar === 'radar' });
  });
  test('it has rows', () => expect(rows.length).toBeGreaterThan(20));
});

const installed = outsideFile(['/lib/firmware/regulatory.db-debian', '/lib/firmware/regulatory.db', '/usr/lib/firmware/regulatory.db'],
  'wireless-regdb');

describe.skipIf(installed.missing)('against the database installed here', () => {
  test('limits are the same still; where they are not, the table here is out of date', () => {
    const limits = readRegdb(readFileSync(installed.path)).filter(({ country, lowMHz, highMHz }) => country in REGIONS && lowMHz >= 2400
      && highMHz <= 5900);
    expect(limits.length).toBeGreaterThan(20);
    for (const limit of limits) holds(limit);
  });
});

/** The binary form, version 20: countries, collections of rules, rules; all big-endian, pointers in words of four bytes. */
function readRegdb(db: Buffer): Limit[] {
  expect(db.toString('latin1', 0, 4)).toBe('RGDB');
  expect(db.readUInt32BE(4)).toBe(20);
  const limits: Limit[] = [];
  for (let at = 8; db.readUInt32BE(at) !== 0; at += 4) {
    const collection = db.readUInt16BE(at + 2) * 4;
    const rulesAt = collection + ((db.readUInt8(collection) + 1) & ~1);
    for (let i = 0; i < db.readUInt8(collection + 1); i += 1) {
      const rule = db.readUInt16BE(rulesAt + 2 * i) * 4;
      const flags = db.readUInt8(rule + 1);
      limits.push({
        country: db.toString('latin1', at, at + 2), lowMHz: db.readUInt32BE(rule + 4) / 1000, highMHz: db.readUInt32BE(rule + 8) / 1000,
        dbm: db.readUInt16BE(rule + 2) / 100, indoors: (flags & 2) !== 0, radar: (flags & 4) !== 0,
      });
    }
  }
  return limits;
}

test('radar avoidance is asked on channels 52 to 64 and 100 to 140 in the EU (EN 301 893), to 144 in the US (47 CFR 15.407)', () => {
  const minded = (region: 'EU' | 'US') => usableChannels(region).filter(({ listenS }) => listenS > 0).map(({ channel }) => channel.channel);
  expect(minded('EU')).toEqual([52, 56, 60, 64, 100, 104, 108, 112, 116, 120, 124, 128, 132, 136, 140]);
  expect(minded('US')).toEqual([...minded('EU'), 144]);
});

test('weather radar costs ten minutes in the EU: channels 120 to 128, or one wide channel over them', () => {
  const slow = (widthMHz: number) => usableChannels('EU', widthMHz).filter(({ listenS }) =>
    listenS === RADAR_AVOIDANCE.listenWeatherRadarS).map(({ channel }) => channel.channel);
  expect(slow(20)).toEqual([120, 124, 128]);
  expect(slow(40)).toEqual([116, 120, 124, 128]);
});

test('channels stand where IEEE 802.11 puts them, and wide ones hold their neighbours', () => {
  expect(RADIO_CHANNELS.find(({ channel }) => channel === 36)?.centreMHz).toBe(5180);
  expect(RADIO_CHANNELS.find(({ channel }) => channel === 6)?.centreMHz).toBe(2437);
  expect(channelSpan(44, 80)).toEqual({ lowMHz: 5170, highMHz: 5250 });
  expect(channelSpan(165, 40)).toBeUndefined();
  expect(channelSpan(7000, 20)).toBeUndefined();
  expect([...new Set(usableChannels('EU', 80).map(({ span }) => span.lowMHz))]).toEqual([5170, 5250, 5490, 5570, 5735]);
});

test('a channel over two bands is held to the stricter: 36 to 64 in one minds radar', () => {
  expect(usableChannels('EU', 160).find(({ channel }) => channel.channel === 36)).toMatchObject({ rule: { radarAvoidance: true, indoorsOnly: true },
    listenS: 60 });
});

test('neighbours do not overlap at 20 MHz, and 1 and 6 of the lower band do not, but 1 and 3 do', () => {
  const overlap = (a: number, b: number) => spansOverlap(channelSpan(a, 20) ?? { lowMHz: 0, highMHz: 0 },
    channelSpan(b, 20) ?? { lowMHz: 0, highMHz: 0 });
  expect([overlap(36, 40), overlap(1, 6), overlap(1, 3)]).toEqual([false, false, true]);
});

test('every rule is dated, and says whose it is', () => {
  expect(RADIO_RULES_AS_OF).toMatch(/^20\d\d-\d\d$/);
  expect(RADIO_RULES_CAUTION).toContain('Local rules decide');
  expect(RADIO_RULES.every(({ source }) => /EN |ERC|CFR/.test(source))).toBe(true);
});
