import type { Fault } from '../../faults/Fault.ts';
import type { VideoFormat } from '../../standards/VideoFormat.ts';
import { ESTABLISHED_TIMINGS, ESTABLISHED_TIMINGS_III } from '../../standards/displayTimings.ts';
import { codedTimings, detailedTiming, standardTiming } from './timings.ts';

export interface PhysicalSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface BaseBlock {
  readonly name: string | undefined;
  readonly physicalSizeMm: PhysicalSize | undefined;
  readonly formats: readonly VideoFormat[];
  readonly warnings: readonly Fault[];
}

// Places in the block: VESA E-EDID, release A, revision 2, section 3.
const REVISION_AT = 19;
const SIZE_CM_AT = 21;
const ESTABLISHED_AT = 35;
const STANDARD_AT = 38;
const DESCRIPTORS_AT = [54, 72, 90, 108] as const;
export const DESCRIPTOR_BYTES = 18;

const NAME_TAG = 0xfc;
const MORE_STANDARD_TAG = 0xfa;
const CODED_TAG = 0xf8;
const ESTABLISHED_III_TAG = 0xf7;

export function readBaseBlock(block: Uint8Array): BaseBlock {
  const at = (i: number) => block[i] ?? 0;
  // The first of the four shapes was square before revision 3.
  const shape00 = at(REVISION_AT) < 3 ? 1 : 10 / 16;
  const descriptors = DESCRIPTORS_AT.map((from, i) => readDescriptor(block.subarray(from, from + DESCRIPTOR_BYTES), `block 0/descriptor ${i + 1}`, shape00));
  const inCm = { widthMm: at(SIZE_CM_AT) * 10, heightMm: at(SIZE_CM_AT + 1) * 10 };
  return {
    name: descriptors.find(({ name }) => name !== undefined)?.name,
    physicalSizeMm: descriptors.find(({ size }) => size !== undefined)?.size ?? stated(inCm),
    formats: [
      ...descriptors.flatMap(({ formats }) => formats),
      ...flagged(ESTABLISHED_TIMINGS, block.subarray(ESTABLISHED_AT, ESTABLISHED_AT + 3)),
      ...standardTimings(block.subarray(STANDARD_AT, STANDARD_AT + 16), shape00),
    ],
    warnings: descriptors.flatMap(({ warnings }) => warnings),
  };
}

/** A size of which one side is 0 is a shape, or a projector's: no size. */
function stated(size: PhysicalSize): PhysicalSize | undefined {
  return size.widthMm > 0 && size.heightMm > 0 ? size : undefined;
}

interface Descriptor {
  readonly name?: string;
  readonly size?: PhysicalSize;
  readonly formats: readonly VideoFormat[];
  readonly warnings: readonly Fault[];
}

function readDescriptor(bytes: Uint8Array, path: string, shape00: number): Descriptor {
  if (bytes[0] !== 0 || bytes[1] !== 0) return readTiming(bytes, path);
  const rest = bytes.subarray(5);
  switch (bytes[3]) {
    case NAME_TAG: {
      const name = textOf(rest);
      return { ...(name === '' ? {} : { name }), formats: [], warnings: [] };
    }
    case MORE_STANDARD_TAG:
      return { formats: standardTimings(rest.subarray(0, 12), shape00), warnings: [] };
    case CODED_TAG:
      return { formats: [0, 1, 2, 3].flatMap((i) => codedTimings(bytes[6 + 3 * i] ?? 0, bytes[7 + 3 * i] ?? 0, bytes[8 + 3 * i] ?? 0)), warnings: [] };
    case ESTABLISHED_III_TAG:
      return { formats: flagged(ESTABLISHED_TIMINGS_III, bytes.subarray(6, 12)), warnings: [] };
    default:
      return { formats: [], warnings: [] };
  }
}

/** A detailed timing as a descriptor; shared with the CTA block. */
export function readTiming(bytes: Uint8Array, path: string): Descriptor {
  const timing = detailedTiming(bytes);
  if (timing === undefined) return { formats: [], warnings: [{ path, message: 'This timing has no picture in it and is left out.', severity: 'warning' }] };
  const size = stated(timing);
  return { formats: [timing.format], ...(size === undefined ? {} : { size: { widthMm: size.widthMm, heightMm: size.heightMm } }), warnings: [] };
}

function standardTimings(bytes: Uint8Array, shape00: number): VideoFormat[] {
  return Array.from({ length: bytes.length / 2 }, (_, i) => standardTiming(bytes[2 * i] ?? 0, bytes[2 * i + 1] ?? 0, shape00)).filter((one) => one !== undefined);
}

/** The formats whose bit is set, the highest bit of the first byte first. */
function flagged(formats: readonly VideoFormat[], bytes: Uint8Array): VideoFormat[] {
  return formats.filter((_, i) => (((bytes[i >> 3] ?? 0) >> (7 - (i & 7))) & 1) === 1);
}

/** Text of a descriptor ends at a line feed; what is not printable is left out. */
function textOf(bytes: Uint8Array): string {
  const end = bytes.indexOf(0x0a);
  const text = String.fromCharCode(...(end < 0 ? bytes : bytes.subarray(0, end)));
  return text.replaceAll(/[^\x20-\x7e]/g, '').trim();
}
