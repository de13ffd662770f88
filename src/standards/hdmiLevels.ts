/** Levels of HDMI by what the link carries. */
export interface HdmiLevel {
  readonly name: '1.4' | '2.0' | '2.1';
  /** Rate of all lanes together, coding included. */
  readonly rateGbps: number;
  /** Share of the rate left for the picture: 8 bits in 10 on the older coding, 16 in 18 on the newer. */
  readonly share: number;
  readonly carries420: boolean;
  /** How far passive copper cables of this level commonly go at its full rate. The standard states no length. */
  readonly passiveReachM: { readonly value: number; readonly low: number; readonly high: number };
  /** Beyond what is traced here in detail: named, so that nobody takes it for a fault. */
  readonly beyond?: true;
  readonly source: string;
}

/** From the slowest to the fastest. Reaches are common practice: a cable's own figure comes first. */
export const HDMI_LEVELS: readonly HdmiLevel[] = [
  {
    name: '1.4', rateGbps: 10.2, share: 8 / 10, carries420: false, passiveReachM: { value: 5, low: 3, high: 8 },
    source: 'HDMI 1.4 (published tables)',
  },
  {
    name: '2.0', rateGbps: 18, share: 8 / 10, carries420: true, passiveReachM: { value: 3, low: 2, high: 5 },
    source: 'HDMI 2.0 (published tables); 4:2:0 is defined from here on',
  },
  {
    name: '2.1', rateGbps: 48, share: 16 / 18, carries420: true, passiveReachM: { value: 2, low: 1, high: 3 }, beyond: true,
    source: 'HDMI 2.1, fixed rate link (published tables)',
  },
];

export function hdmiLevel(name: string): HdmiLevel | undefined {
  return HDMI_LEVELS.find((level) => level.name === name);
}
