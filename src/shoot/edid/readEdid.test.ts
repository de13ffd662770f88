import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { outsideProgram } from '../../../test/outsideTool.ts';
import type { VideoFormat } from '../../standards/VideoFormat.ts';
import { readEdid, type Edid } from './readEdid.ts';

// Every EDID here is built below, of an invented maker (ZZZ) and screen.

interface Screen {
  readonly name?: string;
  readonly sizeCm?: readonly [number, number];
  readonly established?: readonly [number, number, number];
  readonly standard?: readonly number[];
  readonly timings?: readonly number[][];
  readonly descriptors?: readonly number[][];
  readonly extensions?: readonly number[][];
}

const withSum = (bytes: readonly number[]) => [...bytes, (256 - (bytes.reduce((sum, byte) => sum + byte, 0) % 256)) % 256];
const filled = (bytes: readonly number[], length: number, by = 0) =>
  [...bytes, ...Array.from({ length: Math.max(0, length - bytes.length) }, () => by)].slice(0, length);
const text = (tag: number, words: string) => filled([0, 0, 0, tag, 0, ...[...words, '\n'].map((one) => one.charCodeAt(0))], 18, 0x20);

/** A detailed timing from the totals of its raster; sync placed anyhow within the blanking. */
function timing({ widthPx, heightPx, totalWidth, totalHeight, clockMHz, mm = [0, 0], interlaced = false }: {
  widthPx: number; heightPx: number; totalWidth: number; totalHeight: number; clockMHz: number; mm?: [number, number]; interlaced?: boolean;
}): number[] {
  const clock = Math.round(clockMHz * 100);
  const [lines, blankLines] = interlaced ? [heightPx / 2, (totalHeight - 1 - heightPx) / 2] : [heightPx, totalHeight - heightPx];
  const blank = totalWidth - widthPx;
  return [
    clock & 255, clock >> 8, widthPx & 255, blank & 255, ((widthPx >> 8) << 4) | (blank >> 8), lines & 255, blankLines & 255,
    ((lines >> 8) << 4) | (blankLines >> 8),
    48, 32, (3 << 4) | 5, 0, mm[0] & 255, mm[1] & 255, ((mm[0] >> 8) << 4) | (mm[1] >> 8), 0, 0, interlaced ? 0x9e : 0x1e,
  ];
}

const P1080 = timing({ widthPx: 1920, heightPx: 1080, totalWidth: 2200, totalHeight: 1125, clockMHz: 148.5, mm: [121, 68] });
const I1080 = timing({ widthPx: 1920, heightPx: 1080, totalWidth: 2200, totalHeight: 1125, clockMHz: 74.25, interlaced: true, mm: [121, 68] });
const P1200 = timing({ widthPx: 1920, heightPx: 1200, totalWidth: 2080, totalHeight: 1235, clockMHz: 154, mm: [121, 76] });

function edid({ name = 'INVENTED 5', sizeCm = [12, 7], established = [0, 0, 0], standard = [], timings = [P1080], descriptors = [],
  extensions = [] }: Screen): Uint8Array {
  const listed = [...timings, text(0xfc, name), ...descriptors, [0, 0, 0, 0xfd, 0, 23, 61, 15, 80, 30, 0, 10, 32, 32, 32, 32, 32, 32]];
  const slots = [0, 1, 2, 3].flatMap((i) => listed[i] ?? filled([0, 0, 0, 0x10], 18));
  const base = [
    0, 255, 255, 255, 255, 255, 255, 0, 0x6b, 0x5a, 1, 0, 0, 0, 0, 0, 1, 30, 1, 3, 0x80, ...sizeCm, 120, 0x0a,
    0xee, 0x91, 0xa3, 0x54, 0x4c, 0x99, 0x26, 0x0f, 0x50, 0x54, ...established, ...filled(standard, 16, 1), ...slots, extensions.length,
  ];
  return Uint8Array.from([...withSum(base), ...extensions.flatMap((block) => withSum(filled(block, 127)))]);
}

/** A CTA-861 block of data blocks, each `[tag, …payload]`, and timings. */
function cta(dataBlocks: readonly (readonly [number, ...number[]])[], timings: readonly number[][] = []): number[] {
  const data = dataBlocks.flatMap(([tag, ...payload]) => [(tag << 5) | payload.length, ...payload]);
  return [2, 3, 4 + data.length, 0, ...data, ...timings.flat()];
}

const HDMI = [3, 0x03, 0x0c, 0x00, 0x10, 0x00, 0, 60, 0x20, 0, 4 << 5, 1, 2, 3, 4] as const;
const VIDEO = [2, 16 | 128, 31, 32, 33, 34, 4, 19, 5, 20, 60, 93, 97, 107, 111, 193] as const;
const NARROW = [7, 14, 96, 102] as const;

/** 1920 × 1080, 16:9, at 50 and 60 Hz: 540 − 1 = 0x21b pairs of lines. */
const CODED = filled([0, 0, 0, 0xf8, 0, 1, 0x1b, 0x24, 0x38], 18);

const SCREENS: Record<string, Uint8Array> = {
  'a base block alone': edid({}),
  'a base block of all kinds': edid({
    established: [0xff, 0xff, 0x80], standard: [0x81, 0x80, 0xd1, 0xc0, 0xa9, 0x40, 0x95, 0x00], timings: [P1200],
    descriptors: [filled([0, 0, 0, 0xf7, 0, 10, 0xff, 0xff, 0xff, 0xff, 0xff, 0xf0], 18)],
  }),
  'coordinated video timings': edid({ timings: [P1200], descriptors: [CODED] }),
  'a screen on HDMI': edid({ timings: [P1080, I1080], extensions: [cta([VIDEO, HDMI, NARROW], [P1200])] }),
  'two extensions': edid({ extensions: [cta([[2, 16, 31]]), cta([[2, 97, 102]])] }),
};

function read(bytes: Uint8Array | string): Edid {
  const outcome = readEdid(bytes);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
}

const shown = ({ widthPx, heightPx, interlaced, frameRateHz }: VideoFormat) =>
  `${widthPx}x${heightPx}${interlaced ? 'i' : ''}@${Math.round(frameRateHz * (interlaced ? 2 : 1))}`;

const edidDecode = outsideProgram('edid-decode');

describe.skipIf(edidDecode.missing)('against edid-decode', () => {
  test.each(Object.entries(SCREENS))('%s: the same formats, name and size', (_, bytes) => {
    const said = edidDecode.run(['--skip-sha', '-s', '-'], bytes);
    const theirs = [...said.matchAll(/(\d+)x(\d+)(i?)\s+([\d.]+) Hz/g)].map(([, width, height, i, rate]) =>
      `${width}x${height}${i}@${Math.round(Number(rate))}`);
    const mine = read(bytes);
    expect(theirs.length).toBeGreaterThan(0);
    // 72.81 Hz is named 72, 86.96 fields 87: a rate and its whole name are one within 1 Hz.
    const near = (one: string, others: readonly string[]) => [-1, 0,
      1].some((more) => others.includes(one.replace(/@(\d+)$/, (_whole, rate: string) => `@${Number(rate) + more}`)));
    const own = mine.formats.map(shown);
    expect(theirs.filter((one) => !near(one, own))).toEqual([]);
    expect(own.filter((one) => !near(one, theirs))).toEqual([]);
    expect(said).toContain(`Display Product Name: '${mine.name}'`);
    expect(said).toContain(`${mine.physicalSizeMm?.widthMm} mm x ${mine.physicalSizeMm?.heightMm} mm`);
  });

  test('the EDIDs built here have the checksums it wants', () => {
    for (const bytes of Object.values(SCREENS)) expect(edidDecode.run(['--check', '-s', '-'], bytes)).not.toMatch(/checksum 0x\w\w \(should be/i);
    const broken = Uint8Array.from(edid({}), (byte, i) => (i === 127 ? (byte + 1) & 255 : byte));
    expect(edidDecode.run(['--check', '-s', '-'], broken)).toMatch(/should be/);
  });
});

test('a monitor by hand: 1080p60 and 1080i60 (SMPTE ST 274), name and size', () => {
  const { name, physicalSizeMm, formats } = read(edid({ timings: [P1080, I1080] }));
  expect([name, physicalSizeMm]).toEqual(['INVENTED 5', { widthMm: 121, heightMm: 68 }]);
  expect(formats).toEqual([
    { widthPx: 1920, heightPx: 1080, frameRateHz: 60, interlaced: false },
    { widthPx: 1920, heightPx: 1080, frameRateHz: 30, interlaced: true },
  ]);
});

test('a code means its rate and that over 1.001: a screen with 1080p24 takes a camera at 23.976', () => {
  const { formats } = read(edid({ extensions: [cta([[2, 32, 33]])] }));
  expect(formats.map(({ frameRateHz }) => frameRateHz)).toEqual([60, 24, 24 / 1.001, 25]);
});

test('a size in centimetres serves where no timing has one; a shape or a projector has none', () => {
  const bare = timing({ widthPx: 1280, heightPx: 720, totalWidth: 1650, totalHeight: 750, clockMHz: 74.25 });
  expect(read(edid({ timings: [bare], sizeCm: [16, 9] })).physicalSizeMm).toEqual({ widthMm: 160, heightMm: 90 });
  expect(read(edid({ timings: [bare], sizeCm: [79, 0] })).physicalSizeMm).toBeUndefined();
});

test('codes of the coordinated video timings', () => {
  expect(read(edid({ timings: [P1200], descriptors: [CODED] })).formats.map(shown)).toEqual(['1920x1200@60', '1920x1080@50', '1920x1080@60']);
});

describe('hex text', () => {
  const bytes = SCREENS['a screen on HDMI'] ?? new Uint8Array();
  const digits = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0'));
  const rows = Array.from({ length: digits.length / 16 }, (_, i) => digits.slice(16 * i, 16 * i + 16));
  const gutter = (row: string[]) => row.map((two) => String.fromCharCode(Math.min(126, Math.max(32, Number.parseInt(two, 16))))).join('');
  const halves = (row: string[]) => `${row.slice(0, 8).join(' ')}  ${row.slice(8).join(' ')}`;
  const hexOffset = (i: number, length: number) => (16 * i).toString(16).padStart(length, '0');
  test.each([
    ['bare', digits.join('')],
    ['spaced', rows.map((row) => row.join(' ')).join('\n')],
    ['capitals and commas', digits.map((two) => `0x${two.toUpperCase()},`).join(' ')],
    ['with offsets', rows.map((row, i) => `${hexOffset(i, 4)}: ${row.join(' ')}`).join('\r\n')],
    ['a dump in pairs', rows.map((row, i) => `${hexOffset(i, 8)}: ${row.join('').match(/.{4}/g)?.join(' ') ?? ''}  ${gutter(row)}`).join('\n')],
    ['a dump with bars', rows.map((row, i) => `${hexOffset(i, 8)}  ${halves(row)}  |${gutter(row)}|`).join('\n')],
    ['with a note', `# director's screen\n\n${digits.join(' ')}`],
  ])('%s', (_, given) => {
    expect(read(given)).toEqual(read(bytes));
    expect(read(Uint8Array.from(given, (one) => one.charCodeAt(0)))).toEqual(read(bytes));
  });

  test('what is not hexadecimal is named with line and column', () => {
    expect(readEdid('00 ff ff\n00 zz 1 ff')).toEqual({
      ok: false,
      faults: [
        expect.objectContaining({ line: 2, column: 4, message: expect.stringContaining('"zz"') as string }),
        expect.objectContaining({ line: 2, column: 7, message: expect.stringContaining('odd number') as string }),
      ],
    });
  });
});

describe('what stops it', () => {
  const good = edid({ extensions: [cta([VIDEO])] });
  const faultsOf = (bytes: Uint8Array | string) => {
    const outcome = readEdid(bytes);
    return outcome.ok ? [] : outcome.faults.map(({ path, message }) => `${path}: ${message}`);
  };
  test('a length that is none', () => {
    expect(faultsOf(new Uint8Array())).toEqual([': Found 0 bytes; an EDID is 128 bytes, or a multiple of that.']);
    expect(faultsOf('')[0]).toContain('Found 0 bytes');
    expect(faultsOf(good.subarray(0, 200))[0]).toContain('Found 200 bytes');
    expect(faultsOf(good.subarray(0, 128))).toEqual(['block 0: It announces 2 blocks of 128 bytes; found 1.']);
  });
  test('a checksum, with what it should be, of either block', () => {
    const spoilt = Uint8Array.from(good);
    spoilt[200] = (spoilt[200] ?? 0) + 1;
    spoilt[21] = (spoilt[21] ?? 0) + 1;
    const right = (at: number) => (((good[at] ?? 0) + 255) & 255).toString(16).toUpperCase().padStart(2, '0');
    expect(faultsOf(spoilt)).toEqual([expect.stringContaining(`its bytes make it ${right(127)}`),
      expect.stringContaining(`its bytes make it ${right(255)}`)]);
  });
  test('another file', () => expect(faultsOf(Uint8Array.from({ length: 128 },
    (_, i) => 200 + (i % 50)))[0]).toContain('an EDID starts with 00 FF FF FF FF FF FF 00'));
  test('a file of any kind and size: few faults, soon', () => {
    expect(faultsOf(new Uint8Array(100_000_000))).toEqual([': Found 100000000 bytes; no EDID is so long.']);
    expect(faultsOf(new Uint8Array(500_000))).toEqual([': Found 500000 bytes; an EDID has at most 32768.']);
    expect(faultsOf('quite another story\n'.repeat(10_000))).toHaveLength(11);
    expect(faultsOf(Uint8Array.from('quite another story\n'.repeat(10_000), (one) => one.charCodeAt(0))).at(-1)).toContain('29990 more');
  });
  test('a text far too long', () => expect(faultsOf('00 '.repeat(400_000))[0]).toContain('no EDID is so long'));
});

test('what makes no sense inside is left out with a warning: an empty timing, an overlong data block, an unknown code or extension', () => {
  const odd = edid({
    timings: [P1080, filled([1, 0], 18)], extensions: [[2, 3, 8, 0, (2 << 5) | 30, 16, 31, 32], cta([[2, 254, 16]]), [0x70, 0x12]],
  });
  const outcome = readEdid(odd);
  expect(outcome.ok).toBe(true);
  if (!outcome.ok) return;
  expect(outcome.value.formats.map(shown)).toEqual(['1920x1080@60', '1920x1080@60']);
  expect(outcome.warnings.map(({ path }) => path)).toEqual(['block 0/descriptor 2', 'block 1/data block at byte 4', 'block 2/data block at byte 4',
    'block 3']);
  expect(outcome.warnings.every(({ severity }) => severity === 'warning')).toBe(true);
});

property.prop([fc.uint8Array({ minLength: 118, maxLength: 118 }), fc.uint8Array({ minLength: 126, maxLength: 126 })])(
  'any bytes at all end in formats with sound numbers, or in faults',
  (inside, extension) => {
    const base = [0, 255, 255, 255, 255, 255, 255, 0, ...inside, 1];
    const outcome = readEdid(Uint8Array.from([...withSum(base), ...withSum([2, ...extension])]));
    expect(outcome.ok).toBe(true);
    if (!outcome.ok) return;
    for (const { widthPx, heightPx, frameRateHz } of outcome.value.formats) {
      expect(widthPx > 0 && heightPx > 0 && frameRateHz > 0 && Number.isFinite(frameRateHz)).toBe(true);
    }
  },
);
