import type { Fault } from '../../faults/Fault.ts';
import type { VideoFormat } from '../../standards/VideoFormat.ts';
import { ctaFormats, hdmiBlockVic } from '../../standards/ctaFormats.ts';
import { DESCRIPTOR_BYTES, readTiming } from './baseBlock.ts';

export interface CtaBlock {
  readonly formats: VideoFormat[];
  readonly warnings: Fault[];
}

const DATA_AT = 4;
const LAST = 127; // the checksum
const VIDEO_TAG = 2;
const VENDOR_TAG = 3;
const EXTENDED_TAG = 7;
const VIDEO_420_TAG = 14; // formats taken in 4:2:0 only
const HDMI_VENDOR = [0x03, 0x0c, 0x00] as const;

/** Formats of a CTA-861 extension: its video data blocks, those of 4:2:0, the four of the HDMI block, and its detailed timings. */
export function readCtaBlock(block: Uint8Array, path: string): CtaBlock {
  const result: CtaBlock = { formats: [], warnings: [] };
  const timingsAt = block[2] ?? 0;
  if (timingsAt === 0) return result;
  if (timingsAt < DATA_AT || timingsAt > LAST) {
    result.warnings.push({ path, message: `Its timings should start at byte ${timingsAt}, outside 4 to 127; the block is left out.`, severity: 'warning' });
    return result;
  }
  readDataBlocks(block.subarray(DATA_AT, timingsAt), path, result);
  readTimings(block.subarray(timingsAt, LAST), path, result);
  return result;
}

function readDataBlocks(bytes: Uint8Array, path: string, into: CtaBlock): void {
  for (let at = 0; at < bytes.length; ) {
    const head = bytes[at] ?? 0;
    const length = head & 31;
    const payload = bytes.subarray(at + 1, at + 1 + length);
    const place = `${path}/data block at byte ${DATA_AT + at}`;
    if (payload.length < length) {
      into.warnings.push({ path: place, message: `It announces ${length} bytes; ${payload.length} are left before the timings. It is left out.`, severity: 'warning' });
      return;
    }
    for (const vic of codesOf(head >> 5, payload)) {
      const formats = ctaFormats(vic);
      into.formats.push(...formats);
      if (formats.length === 0) into.warnings.push({ path: place, message: `Format code ${vic} is not known and is left out.`, severity: 'warning' });
    }
    at += 1 + length;
  }
}

function codesOf(tag: number, payload: Uint8Array): number[] {
  if (tag === VIDEO_TAG) return [...payload].map(withoutNative);
  if (tag === EXTENDED_TAG && payload[0] === VIDEO_420_TAG) return [...payload.subarray(1)].map(withoutNative);
  if (tag === VENDOR_TAG && HDMI_VENDOR.every((byte, i) => payload[i] === byte)) return hdmiCodes(payload);
  return [];
}

/** Codes 129 to 192 are 1 to 64, marked as native to the panel (CTA-861, short video descriptors). */
function withoutNative(code: number): number {
  return code >= 129 && code <= 192 ? code - 128 : code;
}

/** The HDMI block lists formats of 2160 lines behind fields that are there or not. */
function hdmiCodes(payload: Uint8Array): number[] {
  const flags = payload[7] ?? 0;
  if ((flags & 0x20) === 0) return [];
  const at = 8 + ((flags & 0x80) === 0 ? 0 : 2) + ((flags & 0x40) === 0 ? 0 : 2);
  const count = (payload[at + 1] ?? 0) >> 5;
  return [...payload.subarray(at + 2, at + 2 + count)].map((code) => hdmiBlockVic(code)).filter((vic) => vic !== undefined);
}

function readTimings(bytes: Uint8Array, path: string, into: CtaBlock): void {
  for (let at = 0; at + DESCRIPTOR_BYTES <= bytes.length && (bytes[at] !== 0 || bytes[at + 1] !== 0); at += DESCRIPTOR_BYTES) {
    const { formats, warnings } = readTiming(bytes.subarray(at, at + DESCRIPTOR_BYTES), `${path}/timing ${at / DESCRIPTOR_BYTES + 1}`);
    into.formats.push(...formats);
    into.warnings.push(...warnings);
  }
}
