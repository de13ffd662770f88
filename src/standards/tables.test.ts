import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { JOBS } from '../shoot/schema/day.ts';
import { CHEMISTRIES, COLD_FACTORS, COLD_FACTORS_SOURCE, cellsInSeries, chemistry, coldFactor } from './batteryClasses.ts';
import { carriageClass } from './carriageLimits.ts';
import { COAX_CLASSES, coaxClass } from './coaxClasses.ts';
import { CONNECTORS, connector, mating } from './connectors.ts';
import { CTA_FORMATS_SOURCE, ctaFormats, hdmiBlockVic } from './ctaFormats.ts';
import { DISPLAY_TIMINGS_SOURCE, ESTABLISHED_TIMINGS, ESTABLISHED_TIMINGS_III } from './displayTimings.ts';
import { HDMI_LEVELS, hdmiLevel } from './hdmiLevels.ts';
import { LOSS_COEFFICIENTS, OBSTACLE_LOSSES, obstacleLoss } from './obstacleLosses.ts';
import { RASTERS } from './rasters.ts';
import { RECEIVER_SENSITIVITY_SOURCE } from './receiverSensitivity.ts';
import { SDI_LEVELS, sdiLevel, smallestSdiLevel } from './sdiLevels.ts';
import { LOOKALIKES, SIGNAL_MAPPINGS, rateFamily, sameRate, signalMapping } from './signalMapping.ts';
import { USB_BASIC, USB_CABLE_DROP_V, usbPdSupplies, usbRatedW } from './usbProfiles.ts';
import { LIP_SYNC_MS, VIEWER_JOBS, viewerJob } from './viewerJobs.ts';
import { CONTINUOUS_SHARE_OF_FUSE, FLEXIBLE_CONDUCTORS_SOURCE, WIRE_GAUGES_SOURCE } from './wireGauges.ts';

const raw = (file: string) => readFileSync(new URL(`../../reference/video-timings/${file}`, import.meta.url), 'utf8');

test('every row names its source', () => {
  const tables = [CHEMISTRIES, COAX_CLASSES, CONNECTORS, HDMI_LEVELS, LOSS_COEFFICIENTS, OBSTACLE_LOSSES, RASTERS, SDI_LEVELS, SIGNAL_MAPPINGS,
    USB_BASIC, VIEWER_JOBS];
  for (const { source } of tables.flat()) expect(source.length).toBeGreaterThan(5);
  const whole = [CTA_FORMATS_SOURCE, DISPLAY_TIMINGS_SOURCE, RECEIVER_SENSITIVITY_SOURCE, WIRE_GAUGES_SOURCE, FLEXIBLE_CONDUCTORS_SOURCE,
    COLD_FACTORS_SOURCE, LIP_SYNC_MS.source];
  for (const source of whole) expect(source.length).toBeGreaterThan(5);
});

test('every estimate lies between its own bounds', () => {
  const bands = [
    ...OBSTACLE_LOSSES.map(({ lossDb }) => lossDb), ...LOSS_COEFFICIENTS, ...SDI_LEVELS.map(({ budgetDb }) => budgetDb),
    ...HDMI_LEVELS.map(({ passiveReachM }) => passiveReachM),
    ...CHEMISTRIES.flatMap(({ ohmAh, cutoffV }) => [ohmAh, cutoffV]),
    ...COLD_FACTORS.flatMap(({ resistanceRatio, capacityShare }) => [resistanceRatio, capacityShare]),
    ...VIEWER_JOBS.flatMap(({ delayLimitMs, blurRatioLimit }) => [delayLimitMs, blurRatioLimit]),
  ];
  for (const { value, low, high } of bands) {
    expect(low).toBeLessThanOrEqual(value);
    expect(value).toBeLessThanOrEqual(high);
  }
});

describe('format codes, held to edid-decode', () => {
  const rows = [...raw('cta-vics.txt').matchAll(/^VIC\s+(\d+):\s+(\d+)x(\d+)(i?)\s+([\d.]+) Hz/gm)];
  test('it lists them all', () => expect(rows).toHaveLength(154));
  test.each(rows.map((row) => [Number(row[1]), row] as const))('VIC %i', (vic, [, , width, height, i, rate]) => {
    const sent = Number(width);
    // Pictures of 720 samples, each sent twice, stand there as 1440.
    const twice = sent === 1440 && (i === 'i' || Number(height) < 300);
    const frameRateHz = Number(rate) / (i === 'i' ? 2 : 1);
    const formats = ctaFormats(vic);
    expect(formats[0]).toMatchObject({ widthPx: twice ? 720 : sent, heightPx: Number(height), interlaced: i === 'i' });
    // Half-height pictures vary their lines, so their rates stray by 0.2 %; others are the rate or its twin over 1.001.
    expect(Math.min(...formats.map((one) => Math.abs(one.frameRateHz / frameRateHz - 1)))).toBeLessThan(Number(height) < 300 ? 0.002 : 1e-5);
  });
  test('what is no code is none', () => expect([0, 128, 192, 220, 255].flatMap(ctaFormats)).toEqual([]));
  test('the four of the HDMI block are 2160p', () => expect([1, 2, 3,
    4].map((code) => ctaFormats(hdmiBlockVic(code) ?? 0)[0]?.frameRateHz)).toEqual([30, 25, 24, 24]));
});

test('established timings, held to edid-decode in their order', () => {
  const [first = '', third = ''] = raw('established.txt').split('Established timings III');
  for (const [text, table] of [[first, ESTABLISHED_TIMINGS], [third, ESTABLISHED_TIMINGS_III]] as const) {
    const rows = [...text.matchAll(/(\d+)x(\d+)(i?)\s+([\d.]+) Hz/g)];
    expect(rows).toHaveLength(table.length);
    rows.forEach(([, width, height, i, rate], n) => {
      expect(table[n]).toMatchObject({ widthPx: Number(width), heightPx: Number(height), interlaced: i === 'i' });
      // The standard names its timings by whole rates: 72 for 72.81.
      expect(Math.abs((table[n]?.frameRateHz ?? 0) * (i === 'i' ? 2 : 1) - Number(rate))).toBeLessThan(1);
    });
  }
});

describe('connectors', () => {
  const end = (name: string, sex?: 'male' | 'female') => ({ connector: name, sex });
  test('names are their own, and none means two', () => {
    const names = CONNECTORS.flatMap((one) => [one.name, ...one.also].map((name) => [name, one.name] as const));
    for (const [name, meant] of names) expect(connector(name)?.name, name).toBe(meant);
  });
  test.each([
    ['BNC', 'male', 'BNC', 'female', 'yes'], ['BNC', 'male', 'BNC', 'male', 'no'], ['BNC', 'male', 'high-density BNC', 'female', 'no'],
    ['HDMI', 'male', 'micro HDMI', 'female', 'no'], ['4-pin XLR', 'male', 'XLR 4', 'female', 'yes'],
    ['barrel 5.5×2.1', 'female', 'barrel 5.5/2.5', 'male', 'loose'],
    ['SMA', 'male', 'RP-SMA', 'female', 'dead'], ['home-made', 'male', 'Home-Made', 'female', 'yes'],
  ] as const)('%s %s and %s %s: %s', (a, sexA, b, sexB, fits) => {
    expect(mating(end(a, sexA), end(b, sexB)).fits).toBe(fits);
    expect(mating(end(b, sexB), end(a, sexA)).fits).toBe(fits);
  });
  test('a sex that is not stated is not known', () => expect(mating(end('BNC'), end('BNC', 'male')).fits).toBe('unknown'));
});

test('SDI nominal rates double from HD on, and a budget is a band (ST 259, 292-1, 424, 2081-1, 2082-1)', () => {
  expect(SDI_LEVELS.map(({ rateGbps }) => rateGbps)).toEqual([0.27, 1.485, 2.97, 5.94, 11.88]);
  expect([sdiLevel('6G')?.rateGbps, smallestSdiLevel(1.5)?.name, smallestSdiLevel(12)]).toEqual([5.94, '3G', undefined]);
  expect(hdmiLevel('2.0')?.rateGbps).toBe(18);
  expect(hdmiLevel('3.0')).toBeUndefined();
});

test('23.98 and 23.976 are one rate, 24 another; 29.97 is not 30', () => {
  expect([sameRate(23.98, 24_000 / 1001), sameRate(23.976, 24), sameRate(29.97, 30), sameRate(50, 50)]).toEqual([true, false, false, true]);
  expect(rateFamily(59.94)).toEqual({ wholeHz: 60, by1001: true });
  expect(signalMapping('level A')?.levels).toEqual(['3G']);
  expect(LOOKALIKES.length).toBeGreaterThan(2);
});

test('USB power delivery offers each voltage up to its rating (IEC 62680-1-2)', () => {
  const offers = (watts: number) => usbPdSupplies(watts).map(({ volts, maxA }) => [volts, Number(maxA.toFixed(2))]);
  expect(offers(15)).toEqual([[5, 3]]);
  expect(offers(27)).toEqual([[5, 3], [9, 3]]);
  expect(offers(45)).toEqual([[5, 3], [9, 3], [15, 3]]);
  expect(offers(60)).toEqual([[5, 3], [9, 3], [15, 3], [20, 3]]);
  expect(offers(100).at(-1)).toEqual([20, 5]);
  expect(usbPdSupplies(100).at(-1)?.needs).toBe('a 5 A cable');
  expect(offers(240).at(-1)).toEqual([48, 5]);
  expect([usbRatedW('USB PD 45 W'), usbRatedW('USB 5 V 3 A')]).toEqual([45, undefined]);
  expect(USB_CABLE_DROP_V.value).toBe(0.75);
});

test('a lithium-ion cell runs from 3.0 to 4.2 V, and near a published curve of one: Chen & Rincón-Mora 2006 (from memory), within 0.15 V', () => {
  const published = (soc: number) => -1.031 * Math.exp(-35 * soc) + 3.685 + 0.2156 * soc - 0.1178 * soc ** 2 + 0.3201 * soc ** 3;
  const curve = chemistry('lithium-ion')?.openCircuitV ?? [];
  expect([curve[0], curve.at(-1)]).toEqual([[0, 3], [1, 4.2]]);
  for (const [soc, volts] of curve.filter(([at]) => at >= 0.1)) expect(Math.abs(volts - published(soc))).toBeLessThan(0.15);
});

test.each(CHEMISTRIES)('$name: its voltage only falls, and on average lies near its marking', ({ openCircuitV, markedV }) => {
  const volts = openCircuitV.map(([, v]) => v);
  expect(volts).toEqual(volts.toSorted((a, b) => a - b));
  const mean = openCircuitV.slice(1).reduce((sum, [soc, v], i) =>
    sum + ((v + (openCircuitV[i]?.[1] ?? 0)) / 2) * (soc - (openCircuitV[i]?.[0] ?? 0)), 0);
  expect(mean / markedV[0]).toBeGreaterThan(0.99);
  expect(mean / markedV[1]).toBeLessThan(1.07);
});

test('markings mean cells: 14.4 and 14.8 V four, 7.2 two, 25.9 seven; 12 V of nickel ten, of lead six', () => {
  const cells = (name: string, volts: number) => cellsInSeries(chemistry(name) ?? CHEMISTRIES[0]!, volts);
  expect([cells('Li-Ion', 14.4), cells('lithium ion', 14.8), cells('lithium-ion', 7.2), cells('li-ion', 25.9)]).toEqual([4, 4, 2, 7]);
  expect([cells('NiMH', 12), cells('lead-acid', 12), cells('LiFePO4', 12.8)]).toEqual([10, 6, 4]);
  expect(chemistry('potato')).toBeUndefined();
});

test('cold raises resistance far more than it cuts charge, ever more so', () => {
  const { resistanceRatio, capacityShare } = coldFactor(-5);
  expect(resistanceRatio.value - 1).toBeGreaterThan(3 * (1 - capacityShare.value));
  expect([coldFactor(-40).resistanceRatio.value, coldFactor(20).resistanceRatio.value, coldFactor(80).resistanceRatio.value]).toEqual([5, 1, 0.8]);
});

test('every job a shoot can name has its row', () => {
  expect(VIEWER_JOBS.map(({ job }) => job).toSorted()).toEqual([...JOBS].toSorted());
});

test('the puller bears less delay than the director, and no job asks for less than the eye needs', () => {
  expect(viewerJob('pull focus')?.delayLimitMs.value).toBeLessThan(viewerJob('direct')?.delayLimitMs.value ?? 0);
  // So & Griffin 1995: head tracking gets worse from 40 ms on.
  expect(viewerJob('operate')?.delayLimitMs.low).toBe(40);
  expect(VIEWER_JOBS.every(({ blurRatioLimit }) => blurRatioLimit.low >= 1)).toBe(true);
});

test('odds and ends that questions look up', () => {
  expect(coaxClass('thin')?.loss.length).toBeGreaterThan(1);
  expect(obstacleLoss('floor')?.lossDb.value).toBe(16);
  expect(carriageClass(98).spares).toBe(20);
  expect(CONTINUOUS_SHARE_OF_FUSE.value).toBe(0.8);
});
