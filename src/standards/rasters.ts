import type { VideoFormat } from './VideoFormat.ts';

/** Video rasters on SDI and HDMI: what is seen, and the totals with blanking that set the clock. */
export interface Raster {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly interlaced: boolean;
  /** Whole frames a second (not fields); where `by1001` allows, also this over 1.001. */
  readonly frameRateHz: number;
  /** Which of the two rates the standard has. */
  readonly by1001: 'both' | 'never' | 'always';
  readonly totalWidthPx: number;
  readonly totalHeightPx: number;
  readonly source: string;
}

interface Family {
  readonly size: readonly [widthPx: number, heightPx: number];
  readonly interlaced?: true;
  readonly totalHeightPx: number;
  /** Total width by whole frame rate. */
  readonly totalWidths: Readonly<Record<number, number>>;
  readonly always1001?: true;
  readonly source: string;
}

const HD_WIDTHS = { 24: 2750, 25: 2640, 30: 2200, 48: 2750, 50: 2640, 60: 2200 } as const;
const UHD_WIDTHS = { 24: 5500, 25: 5280, 30: 4400, 48: 5500, 50: 5280, 60: 4400 } as const;

// 720p24 is the raster of SDI, 4125 × 750 at 74.25 MHz (from memory); HDMI sends it as 3300 × 750 at 59.4 MHz (CTA-861, VIC 60).
const FAMILIES: readonly Family[] = [
  { size: [1280, 720], totalHeightPx: 750, totalWidths: { 24: 4125, 25: 3960, 30: 3300, 50: 1980, 60: 1650 }, source: 'SMPTE ST 296' },
  { size: [1920, 1080], interlaced: true, totalHeightPx: 1125, totalWidths: { 25: 2640, 30: 2200 }, source: 'SMPTE ST 274' },
  {
    size: [1920, 1080], totalHeightPx: 1125, totalWidths: { ...HD_WIDTHS, 100: 2640, 120: 2200 },
    source: 'SMPTE ST 274; 48, 100 and 120: CTA-861 VIC 111, 64, 63',
  },
  { size: [2048, 1080], totalHeightPx: 1125, totalWidths: HD_WIDTHS, source: 'SMPTE ST 2048-2 (from memory)' },
  {
    size: [3840, 2160], totalHeightPx: 2250, totalWidths: { ...UHD_WIDTHS, 100: 5280, 120: 4400 },
    source: 'SMPTE ST 2036-1, ST 2081-10, ST 2082-10; CTA-861 VIC 93 to 97, 114, 117, 118',
  },
  {
    size: [4096, 2160], totalHeightPx: 2250, totalWidths: { ...UHD_WIDTHS, 100: 5280, 120: 4400 },
    source: 'SMPTE ST 2081-10, ST 2082-10; CTA-861 VIC 98 to 102, 115, 218, 219',
  },
  { size: [720, 576], interlaced: true, totalHeightPx: 625, totalWidths: { 25: 864 }, source: 'ITU-R BT.601, SMPTE ST 259' },
  { size: [720, 486], interlaced: true, totalHeightPx: 525, totalWidths: { 30: 858 }, always1001: true, source: 'ITU-R BT.601, SMPTE ST 259' },
];

/** Rates that have a twin at 1/1.001: those that are multiples of 24 or 30. */
const hasTwin = (frameRateHz: number) => frameRateHz % 24 === 0 || frameRateHz % 30 === 0;

export const RASTERS: readonly Raster[] = FAMILIES.flatMap(({ size: [widthPx, heightPx], totalWidths, interlaced = false, ...family }) =>
  Object.entries(totalWidths).map(([rate, totalWidthPx]): Raster => {
    const by1001 = family.always1001 ? 'always' : hasTwin(Number(rate)) ? 'both' : 'never';
    const { totalHeightPx, source } = family;
    return { widthPx, heightPx, interlaced, frameRateHz: Number(rate), by1001, totalWidthPx, totalHeightPx, source };
  }),
);

/** The raster asked for, and the exact rate it runs at: 23.98, 23.976 and 24000/1001 all mean 24/1.001. */
export function findRaster(asked: VideoFormat): { readonly raster: Raster; readonly exactRateHz: number } | undefined {
  const sameSize = RASTERS.filter((one) => one.widthPx === asked.widthPx && one.heightPx === asked.heightPx && one.interlaced === asked.interlaced);
  const raster = sameSize.find((one) => exactRate(one, asked.frameRateHz) !== undefined);
  const exactRateHz = raster && exactRate(raster, asked.frameRateHz);
  return raster && exactRateHz !== undefined ? { raster, exactRateHz } : undefined;
}

/** Rates are written with two digits at least: 59.94 for 60/1.001. */
const WRITTEN_WITHIN_HZ = 0.0075;

function exactRate({ frameRateHz, by1001 }: Raster, askedHz: number): number | undefined {
  const exact = [...(by1001 === 'always' ? [] : [frameRateHz]), ...(by1001 === 'never' ? [] : [frameRateHz / 1.001])];
  return exact.find((rate) => Math.abs(rate - askedHz) < WRITTEN_WITHIN_HZ);
}

/** Every known raster as text, one size after the other, for a message. */
export function knownRasters(): string {
  return FAMILIES.map(({ size, interlaced, totalWidths, always1001 }) => {
    const rates = Object.keys(totalWidths).map((rate) => (always1001 ? `${rate}/1.001` : rate));
    return `${size.join(' × ')}${interlaced ? ' interlaced' : ''} at ${rates.join(', ')}`;
  }).join('; ');
}
