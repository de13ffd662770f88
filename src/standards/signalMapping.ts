/**
 * How a picture is laid into an SDI signal. Two ends that agree on raster and rate still see nothing where one sends what the
 * other does not take: these are the ways that differ on set.
 */
export interface SignalMapping {
  readonly name: 'level A' | 'level B' | 'level B, two streams' | 'segmented' | 'single';
  /** Levels of SDI on which it occurs. */
  readonly levels: readonly ('HD' | '3G' | '6G' | '12G')[];
  readonly says: string;
  /** What to look for, and the cure, when the far end stays dark. */
  readonly cure: string;
  readonly source: string;
}

export const SIGNAL_MAPPINGS: readonly SignalMapping[] = [
  {
    name: 'single', levels: ['HD', '6G', '12G'], says: 'One progressive or interlaced picture in its only layout.',
    cure: 'Nothing to set.', source: 'SMPTE ST 292-1, ST 2081-10, ST 2082-10',
  },
  {
    name: 'level A', levels: ['3G'], says: 'The picture laid directly into the link.',
    cure: 'Set the sender to level B, or put a converter between.', source: 'SMPTE ST 425-1:2017, scope',
  },
  {
    name: 'level B', levels: ['3G'], says: 'The two links of ST 372 interleaved in one.',
    cure: 'Set the sender to level A, or put a converter between.', source: 'SMPTE ST 425-1:2017, scope',
  },
  {
    name: 'level B, two streams', levels: ['3G'], says: 'Two HD signals interleaved; most screens show the first only.',
    cure: 'Send one stream.', source: 'SMPTE ST 425-1:2017, scope; what screens show: common practice',
  },
  {
    name: 'segmented', levels: ['HD', '3G'], says: 'A progressive frame sent as two segments, as if interlaced, at the same frame rate.',
    cure: 'Set the sender to progressive; a screen that takes it for interlaced shows combed edges.',
    source: 'SMPTE RP 211 and ST 274 annex (from memory); combing: common practice',
  },
];

export function signalMapping(name: string): SignalMapping | undefined {
  return SIGNAL_MAPPINGS.find((mapping) => mapping.name === name);
}

/** Facts of raster and rate in which two ends of a line may differ although both call it by one name. Common practice. */
export const LOOKALIKES: readonly { readonly name: string; readonly differs: string; readonly cure: string }[] = [
  {
    name: '2048 or 1920 wide', differs: 'A 2048 wide picture is not a 1920 wide one: a screen crops it, squeezes it or stays dark.',
    cure: 'Set the output to 1920 × 1080.',
  },
  {
    name: 'whole or over 1.001', differs: 'A 24 is not a 23.976: recorders refuse it and a screen may drop a frame every 42 s.',
    cure: 'Set the project rate once, for all.',
  },
  { name: 'frames or fields', differs: '“60i” and “59.94i” count fields: 30 and 29.97 frames a second.', cure: 'Enter frames a second here.' },
];

/** Rates a written rate may mean, as whole rate and whether it runs over 1.001: 23.98 → 24 over 1.001. */
export function rateFamily(frameRateHz: number): { readonly wholeHz: number; readonly by1001: boolean } {
  const by1001 = Math.round(frameRateHz * 1.001);
  const isWhole = Math.abs(frameRateHz - Math.round(frameRateHz)) < 0.0075;
  const isBy1001 = !isWhole && Math.abs(frameRateHz - by1001 / 1.001) < 0.0075;
  return { wholeHz: isBy1001 ? by1001 : frameRateHz, by1001: isBy1001 };
}

/** Whether two written rates are the same rate: 23.98 and 23.976 are, 23.976 and 24 are not. */
export function sameRate(firstHz: number, secondHz: number): boolean {
  const [a, b] = [rateFamily(firstHz), rateFamily(secondHz)];
  return a.by1001 === b.by1001 && Math.abs(a.wholeHz - b.wholeHz) < 0.0075;
}
