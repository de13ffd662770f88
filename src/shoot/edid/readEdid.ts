import type { Fault, Outcome } from '../../faults/Fault.ts';
import type { VideoFormat } from '../../standards/VideoFormat.ts';
import { readBaseBlock, type PhysicalSize } from './baseBlock.ts';
import { readCtaBlock } from './ctaBlock.ts';
import { edidBytes } from './edidBytes.ts';

/** What a screen says of itself over its cable, as far as a shoot needs it. */
export interface Edid {
  /** Name the screen gives itself; absent where it gives none. */
  readonly name?: string;
  /** Size of the picture; absent where it is not stated. */
  readonly physicalSizeMm?: PhysicalSize;
  /** Every format it takes, each once, sizes in the order they are first listed. */
  readonly formats: readonly VideoFormat[];
}

const BLOCK_BYTES = 128;
const MOST_BLOCKS = 256; // one and as many as its count of extensions can say
const EXTENSION_COUNT_AT = 126;
const CTA_TAG = 0x02;

/**
 * Decodes an EDID: base block and CTA-861 blocks, from its bytes or from hex text. Faults of length, header and checksum stop
 * it; a single timing or data block that makes no sense is left out with a warning.
 */
export function readEdid(input: Uint8Array | string): Outcome<Edid> {
  const bytes = edidBytes(input);
  if (!bytes.ok) return bytes;
  const faults = frameFaults(bytes.value);
  if (faults.some(({ severity }) => severity !== 'warning')) return { ok: false, faults };
  const [first, ...extensions] = blocksOf(bytes.value);
  if (first === undefined) throw new Error('an EDID without a block passed its length check');
  const base = readBaseBlock(first);
  const cta = extensions.map((block, i) => (block[0] === CTA_TAG ? readCtaBlock(block, `block ${i + 1}`) : skipped(block, `block ${i + 1}`)));
  const physicalSizeMm = base.physicalSizeMm;
  return {
    ok: true,
    value: {
      ...(base.name === undefined ? {} : { name: base.name }),
      ...(physicalSizeMm === undefined ? {} : { physicalSizeMm }),
      formats: eachOnce([...base.formats, ...cta.flatMap(({ formats }) => formats)]),
    },
    warnings: [...faults, ...base.warnings, ...cta.flatMap(({ warnings }) => warnings)],
  };
}

/** What is wrong with the whole, all at once: length, header, count of blocks, checksum of each. */
function frameFaults(bytes: Uint8Array): Fault[] {
  const again = 'Read it from the screen again, whole.';
  if (bytes.length > MOST_BLOCKS * BLOCK_BYTES) {
    return [{ path: '', message: `Found ${bytes.length} bytes; an EDID has at most ${MOST_BLOCKS * BLOCK_BYTES}.`, cure: again }];
  }
  const faults: Fault[] = [];
  if (bytes.length === 0 || bytes.length % BLOCK_BYTES !== 0) {
    faults.push({ path: '', message: `Found ${bytes.length} bytes; an EDID is 128 bytes, or a multiple of that.`, cure: again });
  }
  const header = [0, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0];
  if (bytes.length >= header.length && header.some((byte, i) => bytes[i] !== byte)) {
    faults.push({ path: 'block 0', message: `Found ${hex(bytes.subarray(0, 8))} at the start; an EDID starts with ${hex(header)}.`, cure: again });
  }
  const blocks = blocksOf(bytes);
  const promised = 1 + (bytes[EXTENSION_COUNT_AT] ?? 0);
  if (blocks.length > 0 && bytes.length % BLOCK_BYTES === 0 && blocks.length < promised) {
    faults.push({ path: 'block 0', message: `It announces ${promised} blocks of 128 bytes; found ${blocks.length}.`, cure: again });
  }
  if (blocks.length > promised) {
    faults.push({ path: '', message: `Found ${blocks.length} blocks; it announces ${promised}. The others are read too.`, severity: 'warning' });
  }
  blocks.forEach((block, i) => {
    const sum = block.reduce((total, byte) => (total + byte) % 256, 0);
    const found = block[BLOCK_BYTES - 1] ?? 0;
    const right = (found - sum + 256) % 256;
    if (sum !== 0) faults.push({ path: `block ${i}`, message: `Found checksum ${hex([found])}; its bytes make it ${hex([right])}.`, cure: again });
  });
  return faults;
}

function blocksOf(bytes: Uint8Array): Uint8Array[] {
  return Array.from({ length: Math.floor(bytes.length / BLOCK_BYTES) }, (_, i) => bytes.subarray(i * BLOCK_BYTES, (i + 1) * BLOCK_BYTES));
}

function skipped(block: Uint8Array, path: string): { formats: VideoFormat[]; warnings: Fault[] } {
  const message = `This extension (tag ${hex(block.subarray(0, 1))}) is not read; formats in it are missing.`;
  return { formats: [], warnings: [{ path, message, severity: 'warning' }] };
}

/** Rates that differ by less than the clock's steps of 10 kHz make are one. */
const SAME_RATE_HZ = 0.006;

function eachOnce(formats: readonly VideoFormat[]): VideoFormat[] {
  const kept = new Map<string, VideoFormat[]>();
  for (const format of formats) {
    const raster = `${format.widthPx}x${format.heightPx}${format.interlaced ? 'i' : ''}`;
    const alike = kept.get(raster) ?? [];
    if (!alike.some(({ frameRateHz }) => Math.abs(frameRateHz - format.frameRateHz) < SAME_RATE_HZ)) alike.push(format);
    kept.set(raster, alike);
  }
  return [...kept.values()].flat();
}

function hex(bytes: Iterable<number>): string {
  return Array.from(bytes, (byte) => byte.toString(16).toUpperCase().padStart(2, '0')).join(' ');
}
