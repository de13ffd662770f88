/** Connectors of a camera set: what they carry, what mates with what, and where a fit deceives. */
export interface Connector {
  readonly name: string;
  /** Other ways of writing it. */
  readonly also: readonly string[];
  readonly carries: readonly ('video' | 'power' | 'control' | 'sound' | 'radio')[];
  /**
   * Which half a device commonly has; the other is on the cable. Male goes into female. By direction: outputs of power are female, so
   * that no live pin can be touched, and inputs male; of sound the other way round.
   */
  readonly onDevices: 'female' | 'by direction';
  /** Current of one contact as commonly run, from careful to usual; the part's own figure counts. */
  readonly practiceA?: { readonly low: number; readonly high: number };
  /** Which contact is which, where all agree; absent: it differs from maker to maker, so a cable must be made for its pair. */
  readonly pinning?: string;
  /** A connector that this one seems to fit. */
  readonly deceives?: { readonly with: string; readonly how: 'loose' | 'dead'; readonly says: string };
  readonly source: string;
}

const PRACTICE = 'common practice';
const COAXIAL = 'centre signal, shell screen';
const STANDARD = 'standard in its kind';

const VIDEO: readonly Connector[] = [
  {
    name: 'BNC', also: ['bnc 75 ohm', 'bnc 75'], carries: ['video'], onDevices: 'female', pinning: COAXIAL,
    source: 'IEC 61169-8; 75 ohm for video: a 50 ohm one mates but reflects at 3G and up (common practice)',
  },
  { name: 'high-density BNC', also: ['micro bnc', 'small bnc'], carries: ['video'], onDevices: 'female', pinning: COAXIAL, source: PRACTICE },
  { name: 'DIN 1.0/2.3', also: ['din 1.0 2.3'], carries: ['video'], onDevices: 'female', pinning: COAXIAL, source: 'DIN 41626-2 (from memory)' },
  {
    name: 'HDMI A', also: ['hdmi', 'hdmi type a', 'full-size hdmi'], carries: ['video', 'sound'], onDevices: 'female', pinning: STANDARD,
    source: 'HDMI type A',
  },
  {
    name: 'HDMI C', also: ['mini hdmi', 'hdmi mini', 'hdmi type c'], carries: ['video', 'sound'], onDevices: 'female', pinning: STANDARD,
    source: 'HDMI type C',
  },
  {
    name: 'HDMI D', also: ['micro hdmi', 'hdmi micro', 'hdmi type d'], carries: ['video', 'sound'], onDevices: 'female', pinning: STANDARD,
    source: 'HDMI type D',
  },
];

const POWER: readonly Connector[] = [
  {
    name: 'two-pin tap', also: ['d-tap', 'battery tap', '2-pin tap'], carries: ['power'], onDevices: 'female', practiceA: { low: 5, high: 10 },
    pinning: 'keyed by its shape; a soft plug can be forced in turned over, and then feeds the wrong way round',
    source: 'common practice: fused at 5 to 10 A',
  },
  {
    name: 'XLR 4', also: ['4-pin xlr', 'xlr4'], carries: ['power'], onDevices: 'by direction', practiceA: { low: 5, high: 10 },
    pinning: '12 V: pin 1 minus, pin 4 plus',
    source: 'IEC 61076-2-103; pinning and current common practice',
  },
  {
    name: 'XLR 3', also: ['3-pin xlr', 'xlr3'], carries: ['sound', 'power'], onDevices: 'by direction', practiceA: { low: 5, high: 10 },
    pinning: 'sound: pin 1 screen; 24 V: pin 1 minus, pin 2 plus', source: 'IEC 61076-2-103; 24 V common practice, and no place for a sound line',
  },
  { name: 'XLR 5', also: ['5-pin xlr', 'xlr5'], carries: ['sound', 'control'], onDevices: 'by direction', source: 'IEC 61076-2-103' },
  { name: 'mini XLR 4', also: ['4-pin mini xlr'], carries: ['power'], onDevices: 'by direction', practiceA: { low: 2, high: 5 }, source: PRACTICE },
  {
    name: 'barrel 5.5/2.1', also: ['5.5 x 2.1', 'dc 5.5x2.1', 'barrel 2.1'], carries: ['power'], onDevices: 'female', practiceA: { low: 1, high: 5 },
    deceives: {
      with: 'barrel 5.5/2.5', how: 'loose', says: 'A 2.5 mm bore sits loosely on a 2.1 mm pin, and a 2.1 mm bore does not go on a 2.5 mm pin.',
    },
    source: 'IEC 60130-10; current 1 to 5 A by maker, polarity by maker (common practice)',
  },
  {
    name: 'barrel 5.5/2.5', also: ['5.5 x 2.5', 'dc 5.5x2.5', 'barrel 2.5'], carries: ['power'], onDevices: 'female', practiceA: { low: 1, high: 5 },
    source: 'IEC 60130-10; current 1 to 5 A by maker, polarity by maker (common practice)',
  },
  ...[3.15, 6.3, 10.5, 13.5, 18].map((volts, i) => eiajBarrel(i + 1, volts)),
  {
    name: 'wedge mount', also: ['wedge plate', 'v-mount'], carries: ['power'], onDevices: 'by direction', practiceA: { low: 8, high: 15 },
    pinning: STANDARD,
    source: `${PRACTICE}: 14 V plate packs`,
  },
  {
    name: 'three-stud mount', also: ['3-stud mount'], carries: ['power'], onDevices: 'by direction', practiceA: { low: 8, high: 15 },
    pinning: STANDARD,
    source: `${PRACTICE}: 14 V plate packs`,
  },
  {
    name: 'slide-on 7 V', also: ['small pack shoe', '7 v slide-on'], carries: ['power'], onDevices: 'by direction', practiceA: { low: 2, high: 5 },
    pinning: STANDARD,
    source: `${PRACTICE}: packs of two cells`,
  },
];

const CONTROL: readonly Connector[] = [
  {
    name: 'USB-A', also: ['usb'], carries: ['power', 'control'], onDevices: 'female', practiceA: { low: 0.5, high: 2.4 }, pinning: STANDARD,
    source: 'IEC 62680-2',
  },
  {
    name: 'USB-C', also: ['type-c'], carries: ['power', 'control', 'video'], onDevices: 'female', practiceA: { low: 3, high: 5 }, pinning: STANDARD,
    source: 'IEC 62680-1-3',
  },
  {
    name: 'USB micro-B', also: ['micro usb', 'usb micro'], carries: ['power', 'control'], onDevices: 'female', practiceA: { low: 1, high: 2 },
    pinning: STANDARD,
    source: 'IEC 62680-2 (from memory)',
  },
  pushPull(2, ['power'], 3, 7), pushPull(3, ['control', 'power'], 2, 5), pushPull(4, ['control', 'power'], 2, 5),
  pushPull(5, ['control', 'sound'], 1, 3),
  pushPull(6, ['power', 'control'], 3, 7), pushPull(7, ['control', 'power'], 2, 5), pushPull(8, ['power'], 8, 15),
  {
    name: 'threaded 4-pin', also: ['round threaded 4-pin'], carries: ['power', 'control'], onDevices: 'female', practiceA: { low: 1, high: 3 },
    source: PRACTICE,
  },
  {
    name: 'bayonet 12-pin', also: ['12-pin lens'], carries: ['control', 'power'], onDevices: 'female', practiceA: { low: 0.5, high: 1 },
    source: `${PRACTICE}: servo zooms`,
  },
  { name: 'jack 3.5', also: ['3.5 mm jack', 'mini jack'], carries: ['sound', 'control'], onDevices: 'female', source: 'IEC 60603-11' },
  { name: 'jack 2.5', also: ['2.5 mm jack'], carries: ['control'], onDevices: 'female', source: 'IEC 60603-11' },
  {
    name: 'RJ45', also: ['8p8c', 'network'], carries: ['control', 'video'], onDevices: 'female', practiceA: { low: 0.3, high: 0.6 },
    pinning: STANDARD,
    source: 'IEC 60603-7',
  },
  {
    name: 'SMA', also: ['aerial sma'], carries: ['radio'], onDevices: 'female', pinning: COAXIAL,
    deceives: { with: 'RP-SMA', how: 'dead', says: 'It screws on, but no pin meets a socket, so the aerial is not connected.' },
    source: 'IEC 61169-15; the trap: common practice',
  },
  { name: 'RP-SMA', also: ['reverse sma'], carries: ['radio'], onDevices: 'female', pinning: COAXIAL, source: PRACTICE },
];

export const CONNECTORS: readonly Connector[] = [...VIDEO, ...POWER, ...CONTROL];

/** Round and latching; pinning, keying and polarity differ from maker to maker. */
function pushPull(pins: number, carries: Connector['carries'], low: number, high: number): Connector {
  return {
    name: `push-pull ${pins}-pin`, also: [`${pins}-pin push-pull`, `${pins}-pin round`], carries, onDevices: 'female', practiceA: { low, high },
    source: PRACTICE,
  };
}

function eiajBarrel(size: number, volts: number): Connector {
  return {
    name: `barrel EIAJ ${size}`, also: [`eiaj ${size}`], carries: ['power'], onDevices: 'female', practiceA: { low: 2, high: 2 },
    pinning: `centre plus, to ${volts} V`, source: 'EIAJ RC-5320A',
  };
}

const BY_NAME: ReadonlyMap<string, Connector> = new Map(
  CONNECTORS.flatMap((one) => [one.name, ...one.also].map((name) => [plain(name), one] as const)),
);

function plain(name: string): string {
  return name.toLowerCase().replaceAll(/[\s_×/-]+/g, ' ').trim();
}

/** The connector of this name, or of one of its other names. */
export function connector(name: string): Connector | undefined {
  return BY_NAME.get(plain(name));
}

export interface End {
  readonly connector: string;
  readonly sex?: 'male' | 'female' | 'neutral' | undefined;
}

export interface Mating {
  /** `unknown`: a sex is not stated, so it may or may not. */
  readonly fits: 'yes' | 'no' | 'unknown' | 'loose' | 'dead';
  readonly says: string;
}

/** Whether two ends mate. Names that are in no table must be the same, letter for letter but for spaces and case. */
export function mating(first: End, second: End): Mating {
  const [a, b] = [connector(first.connector), connector(second.connector)];
  const [nameA, nameB] = [a?.name ?? first.connector, b?.name ?? second.connector];
  if (plain(nameA) !== plain(nameB)) return trapOf(a, b) ?? trapOf(b, a) ?? { fits: 'no', says: `${nameA} does not mate with ${nameB}.` };
  if (first.sex === 'neutral' || second.sex === 'neutral') return { fits: 'yes', says: `${nameA} mates with its like.` };
  if (first.sex === undefined || second.sex === undefined) return { fits: 'unknown', says: `The sex of one ${nameA} is not stated.` };
  if (first.sex === second.sex) return { fits: 'no', says: `Both ${nameA} are ${first.sex}.` };
  return { fits: 'yes', says: `${nameA}, male into female.` };
}

function trapOf(one: Connector | undefined, other: Connector | undefined): Mating | undefined {
  const trap = one?.deceives;
  return trap !== undefined && trap.with === other?.name ? { fits: trap.how, says: trap.says } : undefined;
}
