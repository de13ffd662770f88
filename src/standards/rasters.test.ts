import { describe, expect, test } from 'vitest';
import { outsideProgram } from '../../test/outsideTool.ts';
import { RASTERS, findRaster } from './rasters.ts';

const edidDecode = outsideProgram('edid-decode');

/** Codes of CTA-861 whose timings are those of SDI; 60 (720p24) is not: see the last test. */
const VICS = [4, 5, 16, 19, 20, 31, 32, 33, 34, 61, 62, 63, 64, ...Array.from({ length: 10 }, (_, i) => 93 + i), 111, 114, 115, 117, 118, 218, 219];

describe.skipIf(edidDecode.missing)('against edid-decode', () => {
  test.each(VICS)('VIC %i has the same totals and clock', (vic) => {
    const said = edidDecode.run(['--vic', String(vic)]);
    const [, width, height, i, rate, clock] = (/(\d+)x(\d+)(i?)\s+([\d.]+) Hz.*?([\d.]+) MHz/.exec(said) ?? []) as unknown as string[];
    const blanks = (letter: string) => [...said.matchAll(new RegExp(`${letter}(?:front|sync|back)\\s+(\\d+)`, 'g'))].slice(0, 3);
    const blank = (letter: string) => blanks(letter).reduce((sum, one) => sum + Number(one[1]), 0);
    const interlaced = i === 'i';
    const frameRateHz = Number(rate) / (interlaced ? 2 : 1);
    const { raster } = findRaster({ widthPx: Number(width), heightPx: Number(height), interlaced, frameRateHz }) ?? {};
    expect(raster?.totalWidthPx).toBe(Number(width) + blank('H'));
    // Each field of an interlaced picture has half a line more than its front porch, sync and back porch.
    expect(raster?.totalHeightPx).toBe(interlaced ? Number(height) + 2 * blank('V') + 1 : Number(height) + blank('V'));
    expect(((raster?.totalWidthPx ?? 0) * (raster?.totalHeightPx ?? 0) * (raster?.frameRateHz ?? 0)) / 1e6).toBeCloseTo(Number(clock), 6);
  });
});

test('every clock is a multiple of 74.25 MHz, or the 13.5 of standard definition', () => {
  expect(RASTERS.length).toBeGreaterThan(30);
  for (const { totalWidthPx, totalHeightPx, frameRateHz, by1001 } of RASTERS) {
    const clockHz = (totalWidthPx * totalHeightPx * frameRateHz) / (by1001 === 'always' ? 1.001 : 1);
    expect(Math.min(clockHz % 74.25e6, clockHz % 13.5e6)).toBeCloseTo(0, 3);
  }
});

test('written rates find the exact ones, and 24 is not 23.976', () => {
  const at = (frameRateHz: number) => findRaster({ widthPx: 1920, heightPx: 1080, frameRateHz, interlaced: false })?.exactRateHz;
  expect([23.976, 23.98, 24_000 / 1001].map(at)).toEqual([24 / 1.001, 24 / 1.001, 24 / 1.001]);
  expect([24, 29.97, 59.94, 60].map(at)).toEqual([24, 30 / 1.001, 60 / 1.001, 60]);
  expect(at(24.95)).toBeUndefined();
  expect(findRaster({ widthPx: 1920, heightPx: 1080, frameRateHz: 59.94, interlaced: true })).toBeUndefined();
});

test('720p24 on SDI keeps 74.25 MHz, where HDMI has 59.4', () => {
  const { raster } = findRaster({ widthPx: 1280, heightPx: 720, frameRateHz: 24, interlaced: false }) ?? {};
  expect([raster?.totalWidthPx, raster?.totalHeightPx]).toEqual([4125, 750]);
});
