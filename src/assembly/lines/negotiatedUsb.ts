import { type UsbSupply, usbPdSupplies, usbRatedW } from '../../standards/usbProfiles.ts';
import type { WiredPort } from './wiring.ts';

/** The fixed voltage that a negotiated USB supply and a device settle on: the highest of the supply's that the device takes. `undefined` where nothing is negotiated. */
export function negotiatedUsb(from: WiredPort, to: WiredPort): UsbSupply | undefined {
  const profile = from.port.power?.profile;
  const ratedW = profile === undefined ? undefined : usbRatedW(profile);
  if (profile === undefined || ratedW === undefined) return undefined;
  const supplies = /\bPD\b/i.test(profile) ? usbPdSupplies(ratedW) : usbPdSupplies(ratedW).slice(0, 1);
  const lowV = to.piece.part.figure(`ports/${to.id}/power/lowV`)?.value ?? 0;
  const highV = to.piece.part.figure(`ports/${to.id}/power/highV`)?.value ?? Infinity;
  return supplies.findLast(({ volts }) => volts >= lowV && volts <= highV) ?? supplies[0];
}
