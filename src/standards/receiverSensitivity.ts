/** The least sensitivity that IEEE 802.11 asks of a receiver of 20 MHz; good ones do several dB better. */
export interface ReceiverSensitivity {
  readonly modulation: string;
  readonly dbm: number;
}

export const RECEIVER_SENSITIVITY: readonly ReceiverSensitivity[] = [
  { modulation: 'BPSK 1/2', dbm: -82 },
  { modulation: 'QPSK 1/2', dbm: -79 },
  { modulation: 'QPSK 3/4', dbm: -77 },
  { modulation: '16-QAM 1/2', dbm: -74 },
  { modulation: '16-QAM 3/4', dbm: -70 },
  { modulation: '64-QAM 2/3', dbm: -66 },
  { modulation: '64-QAM 3/4', dbm: -65 },
  { modulation: '64-QAM 5/6', dbm: -64 },
];

export const RECEIVER_SENSITIVITY_SOURCE = 'IEEE 802.11, minimum sensitivity at 20 MHz; 3 dB more for each doubling of the width';

/** Least sensitivity at a width, dBm. */
export function sensitivityDbm(modulation: string, widthMHz: number): number | undefined {
  const row = RECEIVER_SENSITIVITY.find((one) => one.modulation === modulation);
  return row && row.dbm + 3 * Math.log2(widthMHz / 20);
}
