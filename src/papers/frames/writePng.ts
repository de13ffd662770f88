import { zlibSync } from 'fflate';
import { joined } from '../type/subset.ts';

/** A line picture: which of four inks a pixel has, row by row; ink 0 is clear. */
export interface LinePicture {
  readonly widthPx: number;
  readonly heightPx: number;
  /** The inks of a row; the same object for rows that are alike. */
  readonly row: (y: number) => Uint8Array;
}

/** Clear, white, black, grey. */
const INKS = [0, 0, 0, 255, 255, 255, 0, 0, 0, 128, 128, 128];
const CLEAR = [0, 255, 255, 255];

/** A PNG of four inks, two bits a pixel, the first one see-through (W3C PNG, third edition). */
export function writePng({ widthPx, heightPx, row }: LinePicture): Uint8Array {
  const stride = Math.ceil(widthPx / 4) + 1;
  const raw = new Uint8Array(stride * heightPx);
  const packed = new Map<Uint8Array, Uint8Array>();
  for (let y = 0; y < heightPx; y += 1) {
    const inks = row(y);
    const known = packed.get(inks) ?? pack(inks, stride);
    packed.set(inks, known);
    raw.set(known, y * stride);
  }
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, widthPx);
  view.setUint32(4, heightPx);
  header.set([2, 3, 0, 0, 0], 8);
  return joined([
    Uint8Array.of(137, 80, 78, 71, 13, 10, 26, 10), chunk('IHDR', header), chunk('PLTE', Uint8Array.from(INKS)), chunk('tRNS', Uint8Array.from(CLEAR)), chunk('IDAT', zlibSync(raw, { level: 4 })), chunk('IEND', new Uint8Array()),
  ]);
}

function pack(inks: Uint8Array, stride: number): Uint8Array {
  const bytes = new Uint8Array(stride);
  inks.forEach((ink, x) => {
    bytes[1 + (x >> 2)] = (bytes[1 + (x >> 2)] ?? 0) | (ink << (6 - 2 * (x % 4)));
  });
  return bytes;
}

function chunk(kind: string, data: Uint8Array): Uint8Array {
  const body = joined([Uint8Array.from(kind, (letter) => letter.codePointAt(0) ?? 0), data]);
  const whole = new Uint8Array(body.length + 8);
  const view = new DataView(whole.buffer);
  view.setUint32(0, data.length);
  whole.set(body, 4);
  view.setUint32(body.length + 4, crc(body));
  return whole;
}

const TABLE = Uint32Array.from({ length: 256 }, (_, value) => {
  let crc = value;
  for (let bit = 0; bit < 8; bit += 1) crc = (crc & 1) === 1 ? (crc >>> 1) ^ 0xED_B8_83_20 : crc >>> 1;
  return crc >>> 0;
});

function crc(bytes: Uint8Array): number {
  let sum = 0xFF_FF_FF_FF;
  for (const byte of bytes) sum = (sum >>> 8) ^ (TABLE[(sum ^ byte) & 255] ?? 0);
  return (sum ^ 0xFF_FF_FF_FF) >>> 0;
}
