import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { RASTERS } from '../../standards/rasters.ts';
import { SDI_LEVELS } from '../../standards/sdiLevels.ts';
import { signal } from './signal.ts';

type Asked = Parameters<typeof signal>[0];
const hd = { widthPx: 1920, heightPx: 1080, interlaced: false, sampling: '4:2:2', bitDepth: 10 } as const satisfies Partial<Asked>;
const uhd = { ...hd, widthPx: 3840, heightPx: 2160 } as const;

// SMPTE ST 292-1, 424, 425-1, 2081-10, 2082-10 and 2081-1, 2082-1 (read in copies): the raster, and the one link that carries it.
const SINGLE_LINKS: [Asked, clockMHz: number, level: string | null][] = [
  ...[24, 25, 30, 50, 60].map((frameRateHz): [Asked, number, string] => [{ ...hd, widthPx: 1280, heightPx: 720, frameRateHz }, 74.25, 'HD']),
  ...[24, 25, 30].map((frameRateHz): [Asked, number, string] => [{ ...hd, frameRateHz }, 74.25, 'HD']),
  ...[25, 30].map((frameRateHz): [Asked, number, string] => [{ ...hd, frameRateHz, interlaced: true }, 74.25, 'HD']),
  ...[50, 60].map((frameRateHz): [Asked, number, string] => [{ ...hd, frameRateHz }, 148.5, '3G']),
  ...[24, 25, 30].map((frameRateHz): [Asked, number, string] => [{ ...uhd, frameRateHz }, 297, '6G']),
  ...[50, 60].map((frameRateHz): [Asked, number, string] => [{ ...uhd, frameRateHz }, 594, '12G']),
  [{ ...hd, frameRateHz: 25, sampling: '4:4:4', bitDepth: 12 }, 74.25, '3G'],
  [{ ...uhd, frameRateHz: 30, sampling: '4:4:4', bitDepth: 10 }, 297, '12G'],
  [{ ...uhd, frameRateHz: 60, sampling: '4:4:4', bitDepth: 10 }, 594, null],
];

test.each(SINGLE_LINKS)('%j', (asked, clockMHz, level) => {
  const got = signal(asked);
  expect(got.pixelClockMHz).toBeCloseTo(clockMHz, 9);
  expect(got.sdiLevel).toBe(level);
  expect(got.sdiGbps).toBe(SDI_LEVELS.find(({ name }) => name === level)?.rateGbps ?? null);
});

test('blanking counts: 1080p60 is 2.97 Gb/s, not the 2.488 of its active pixels', () => {
  expect(signal({ ...hd, frameRateHz: 60 }).payloadGbps).toBeCloseTo(2.97, 9);
  expect((1920 * 1080 * 60 * 20) / 1e9).toBeCloseTo(2.488, 3);
});

describe('rates over 1.001', () => {
  test('the link runs over 1.001 too, at the same level (SMPTE ST 292-1, ST 424)', () => {
    expect(signal({ ...hd, frameRateHz: 23.98 })).toMatchObject({ sdiLevel: 'HD', sdiGbps: 1.485 / 1.001 });
    expect(signal({ ...hd, frameRateHz: 59.94 })).toMatchObject({ sdiLevel: '3G', sdiGbps: 2.97 / 1.001 });
  });
});

// Published tables of HDMI: the level that carries 2160p.
test.each([
  [30, '4:4:4', 8, '1.4'], [30, '4:4:4', 10, '2.0'], [30, '4:4:4', 12, '2.0'], [60, '4:4:4', 8, '2.0'], [60, '4:2:2', 12, '2.0'],
  [60, '4:2:0', 8, '2.0'],
  [60, '4:4:4', 10, '2.1'],
] as const)('2160p%i %s at %i bit wants HDMI %s', (frameRateHz, sampling, bitDepth, level) => {
  expect(signal({ ...uhd, frameRateHz, sampling, bitDepth }).hdmiLevel).toBe(level);
});

test('an unknown raster is a fault that lists the known ones; a field rate is pointed at the rate', () => {
  const anamorphic = signal.answer({ ...hd, widthPx: 2880, heightPx: 2160, frameRateHz: 24 });
  expect(anamorphic).toMatchObject({ ok: false, faults: [{ path: 'widthPx' }] });
  expect(JSON.stringify(anamorphic)).toContain('1920 × 1080 at 24, 25, 30');
  expect(signal.answer({ ...hd, frameRateHz: 60, interlaced: true })).toMatchObject({ ok: false, faults: [{ path: 'frameRateHz' }] });
});

property.prop([fc.constantFrom(...RASTERS), fc.constantFrom('4:2:2', '4:4:4', '4:2:0'), fc.constantFrom(8, 10, 12)])(
  'the level named carries the payload and the one below does not carry the words sent',
  (raster, sampling, bitDepth) => {
    const frameRateHz = raster.by1001 === 'always' ? raster.frameRateHz / 1.001 : raster.frameRateHz;
    const { payloadGbps, sdiGbps, sdiLevel } = signal({ ...raster, frameRateHz, sampling, bitDepth });
    if (sdiGbps === null) expect(payloadGbps).toBeGreaterThan(11.88 / 1.5);
    else expect(payloadGbps).toBeLessThanOrEqual(sdiGbps * (1 + 1e-9));
    const below = SDI_LEVELS[SDI_LEVELS.findIndex(({ name }) => name === sdiLevel) - 1];
    // A sample takes 10 bits at least, and 4:2:0 the room of 4:2:2.
    if (below && sdiGbps !== null) expect(payloadGbps * (10 / 8) * (2 / 1.5)).toBeGreaterThan(below.rateGbps / 1.001);
  },
);
