/** What screws of a strength class stand: stress, on the stress area, up to which they come back to their length. */
export interface ScrewClass {
  readonly name: string;
  readonly proofMPa: number;
  readonly says: string;
  readonly source: string;
}

export const SCREW_CLASSES: readonly ScrewClass[] = [
  { name: '4.6', proofMPa: 225, says: 'mild steel', source: 'ISO 898-1 (from memory)' },
  { name: '5.8', proofMPa: 380, says: 'steel', source: 'ISO 898-1 (from memory)' },
  { name: '8.8', proofMPa: 580, says: 'quenched steel, to 16 mm', source: 'ISO 898-1 (from memory)' },
  { name: '10.9', proofMPa: 830, says: 'quenched steel', source: 'ISO 898-1 (from memory)' },
  { name: '12.9', proofMPa: 970, says: 'quenched steel, socket heads', source: 'ISO 898-1 (from memory)' },
  { name: 'A2-70', proofMPa: 450, says: 'stainless steel', source: 'ISO 3506-1, 0.2 % proof stress (from memory)' },
];

/** Of a screw whose class is not known: the usual stainless camera screw is at least about this. */
export const UNKNOWN_CLASS = 'A2-70';

export function screwClass(name: string): ScrewClass | undefined {
  return SCREW_CLASSES.find((one) => one.name.toLowerCase() === name.toLowerCase().trim());
}
