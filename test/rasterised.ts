import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly dpi: number;
  readonly isInk: (x: number, y: number) => boolean;
}

/** A page of a PDF as poppler's pdftoppm rasterises it. */
export function rasterised(pdf: Uint8Array, page: number, dpi: number): Raster {
  const folder = mkdtempSync(join(tmpdir(), 'raster-'));
  try {
    writeFileSync(join(folder, 'in.pdf'), pdf);
    execFileSync('pdftoppm', ['-r', String(dpi), '-f', String(page), '-l', String(page), '-gray', '-singlefile', join(folder, 'in.pdf'), join(folder, 'out')]);
    const bytes = readFileSync(join(folder, 'out.pgm'));
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
    if (head === null) throw new Error('pdftoppm gave no P5 picture.');
    const [width, height] = [Number(head[1]), Number(head[2])];
    const start = head[0].length;
    return { width, height, dpi, isInk: (x, y) => (bytes[start + y * width + x] ?? 255) < 160 };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The middles of the stretches of ink in a row of pixels, in mm from the left edge. */
export function inkInRow({ width, dpi, isInk }: Raster, yMm: number, fromMm = 0, toMm = Infinity): number[] {
  const y = Math.round((yMm * dpi) / 25.4);
  const found: number[] = [];
  let start = -1;
  for (let x = 0; x <= width; x += 1) {
    const ink = x < width && isInk(x, y);
    if (ink && start < 0) start = x;
    if (!ink && start >= 0) {
      found.push((((start + x) / 2) * 25.4) / dpi);
      start = -1;
    }
  }
  return found.filter((mm) => mm >= fromMm && mm <= toMm);
}
