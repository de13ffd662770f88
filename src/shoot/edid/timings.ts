import type { VideoFormat } from '../../standards/VideoFormat.ts';

/** A detailed timing of 18 bytes: the format, and the size of the picture where it is stated. */
export interface DetailedTiming {
  readonly format: VideoFormat;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Reads a detailed timing, or nothing where it has no picture. Lines of an interlaced one count per field, and half a line more. */
export function detailedTiming(bytes: Uint8Array): DetailedTiming | undefined {
  const at = (i: number) => bytes[i] ?? 0;
  const joined = (low: number, high: number, half: 'upper' | 'lower') => at(low) + 256 * (half === 'upper' ? at(high) >> 4 : at(high) & 15);
  const clockHz = (at(0) + 256 * at(1)) * 10_000;
  const widthPx = joined(2, 4, 'upper');
  const lines = joined(5, 7, 'upper');
  const totalWidth = widthPx + joined(3, 4, 'lower');
  const totalLines = lines + joined(6, 7, 'lower');
  if (clockHz === 0 || widthPx === 0 || lines === 0) return undefined;
  const interlaced = (at(17) & 0x80) !== 0;
  return {
    format: {
      widthPx,
      heightPx: interlaced ? 2 * lines : lines,
      frameRateHz: clockHz / (totalWidth * (interlaced ? 2 * totalLines + 1 : totalLines)),
      interlaced,
    },
    widthMm: joined(12, 14, 'upper'),
    heightMm: joined(13, 14, 'lower'),
  };
}

/** A standard timing of 2 bytes: width, shape and whole rate. Unused ones give nothing. */
export function standardTiming(first: number, second: number, shape00: number): VideoFormat | undefined {
  if (first === 0 || (first === 1 && second === 1)) return undefined;
  const widthPx = (first + 31) * 8;
  const heightOverWidth = [shape00, 3 / 4, 4 / 5, 9 / 16][second >> 6] ?? shape00;
  return { widthPx, heightPx: Math.floor(widthPx * heightOverWidth), frameRateHz: (second & 63) + 60, interlaced: false };
}

/** A 3-byte code of the coordinated video timings: lines, shape, and a bit for each rate. */
export function codedTimings(first: number, second: number, third: number): VideoFormat[] {
  const heightPx = 2 * (first + 256 * (second >> 4) + 1);
  const shape = [4 / 3, 16 / 9, 16 / 10, 15 / 9][(second >> 2) & 3] ?? 4 / 3;
  const widthPx = Math.floor((heightPx * shape) / 8 + 1e-9) * 8;
  if (widthPx === 0) return [];
  const rates = [[0x10, 50], [0x08, 60], [0x04, 75], [0x02, 85], [0x01, 60]] as const;
  return rates.filter(([bit]) => (third & bit) !== 0).map(([, frameRateHz]) => ({ widthPx, heightPx, frameRateHz, interlaced: false }));
}
