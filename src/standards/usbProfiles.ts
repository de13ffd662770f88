/** What a USB supply gives: by agreement of old, and negotiated (power delivery). */
export interface UsbSupply {
  readonly name: string;
  readonly volts: number;
  readonly maxA: number;
  readonly needs?: 'a 5 A cable' | 'a 240 W cable';
  readonly source: string;
}

/** Supplies without negotiation by message. */
export const USB_BASIC: readonly UsbSupply[] = [
  { name: 'USB 2 default', volts: 5, maxA: 0.5, source: 'USB 2.0' },
  { name: 'USB 3 default', volts: 5, maxA: 0.9, source: 'USB 3.2' },
  { name: 'USB battery charging', volts: 5, maxA: 1.5, source: 'USB Battery Charging 1.2' },
  { name: 'USB-C 1.5 A', volts: 5, maxA: 1.5, source: 'IEC 62680-1-3' },
  { name: 'USB-C 3 A', volts: 5, maxA: 3, source: 'IEC 62680-1-3' },
];

const FIXED_VOLTS: readonly { readonly volts: number; readonly fromW: number; readonly toW: number; readonly needs?: UsbSupply['needs'] }[] = [
  { volts: 5, fromW: 0, toW: 15 },
  { volts: 9, fromW: 15, toW: 27 },
  { volts: 15, fromW: 27, toW: 45 },
  { volts: 20, fromW: 45, toW: 60 },
  { volts: 20, fromW: 60, toW: 100, needs: 'a 5 A cable' },
  { volts: 28, fromW: 100, toW: 140, needs: 'a 240 W cable' },
  { volts: 36, fromW: 140, toW: 180, needs: 'a 240 W cable' },
  { volts: 48, fromW: 180, toW: 240, needs: 'a 240 W cable' },
];

const USB_PD_SOURCE = 'IEC 62680-1-2 (USB power delivery)';

/**
 * The fixed voltages a supply of this rating offers, each with its current: 27 W gives 5 V and 9 V, but not 15 V; so a device
 * that asks for 12 V may get none.
 */
export function usbPdSupplies(ratedW: number): readonly UsbSupply[] {
  const byVolts = new Map<number, UsbSupply>();
  for (const { volts, fromW, toW, needs } of FIXED_VOLTS) {
    if (ratedW <= fromW) continue;
    const maxA = Math.min(ratedW, toW) / volts;
    byVolts.set(volts, { name: `USB PD ${volts} V`, volts, maxA, ...(needs === undefined ? {} : { needs }), source: USB_PD_SOURCE });
  }
  return [...byVolts.values()];
}

/** Most a cable may lose, there and back, at full current. */
export const USB_CABLE_DROP_V = { value: 0.75, source: 'IEC 62680-1-3, at 3 or 5 A' } as const;

/** The rating in watts that a profile's name states: `USB PD 45 W` → 45. */
export function usbRatedW(profile: string): number | undefined {
  const match = /(\d+(?:\.\d+)?)\s*W\b/.exec(profile);
  return match?.[1] === undefined ? undefined : Number(match[1]);
}
