import type { VideoFormat } from './VideoFormat.ts';

const progressive = (widthPx: number, heightPx: number, frameRateHz: number): VideoFormat => ({ widthPx, heightPx, frameRateHz, interlaced: false });
const interlaced = (widthPx: number, heightPx: number, fieldRateHz: number): VideoFormat =>
  ({ widthPx, heightPx, frameRateHz: fieldRateHz / 2, interlaced: true });

export const DISPLAY_TIMINGS_SOURCE = 'VESA E-EDID standard, release A, revision 2 (from memory; held to edid-decode by the tests)';

/** Established timings I and II, and the maker's one: bit 7 of byte 35 of the EDID first. Rates as the standard names them. */
export const ESTABLISHED_TIMINGS: readonly VideoFormat[] = [
  progressive(720, 400, 70), progressive(720, 400, 88), progressive(640, 480, 60), progressive(640, 480, 67),
  progressive(640, 480, 72), progressive(640, 480, 75), progressive(800, 600, 56), progressive(800, 600, 60),
  progressive(800, 600, 72), progressive(800, 600, 75), progressive(832, 624, 75), interlaced(1024, 768, 87),
  progressive(1024, 768, 60), progressive(1024, 768, 70), progressive(1024, 768, 75), progressive(1280, 1024, 75),
  progressive(1152, 870, 75),
];

/** Established timings III: bit 7 of byte 6 of their descriptor first. Two entries of one name differ only in blanking. */
export const ESTABLISHED_TIMINGS_III: readonly VideoFormat[] = [
  progressive(640, 350, 85), progressive(640, 400, 85), progressive(720, 400, 85), progressive(640, 480, 85),
  progressive(848, 480, 60), progressive(800, 600, 85), progressive(1024, 768, 85), progressive(1152, 864, 75),
  progressive(1280, 768, 60), progressive(1280, 768, 60), progressive(1280, 768, 75), progressive(1280, 768, 85),
  progressive(1280, 960, 60), progressive(1280, 960, 85), progressive(1280, 1024, 60), progressive(1280, 1024, 85),
  progressive(1360, 768, 60), progressive(1440, 900, 60), progressive(1440, 900, 60), progressive(1440, 900, 75),
  progressive(1440, 900, 85), progressive(1400, 1050, 60), progressive(1400, 1050, 60), progressive(1400, 1050, 75),
  progressive(1400, 1050, 85), progressive(1680, 1050, 60), progressive(1680, 1050, 60), progressive(1680, 1050, 75),
  progressive(1680, 1050, 85), progressive(1600, 1200, 60), progressive(1600, 1200, 65), progressive(1600, 1200, 70),
  progressive(1600, 1200, 75), progressive(1600, 1200, 85), progressive(1792, 1344, 60), progressive(1792, 1344, 75),
  progressive(1856, 1392, 60), progressive(1856, 1392, 75), progressive(1920, 1200, 60), progressive(1920, 1200, 60),
  progressive(1920, 1200, 75), progressive(1920, 1200, 85), progressive(1920, 1440, 60), progressive(1920, 1440, 75),
];
