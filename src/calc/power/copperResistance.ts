import { COPPER } from '../../standards/copper.ts';

/** Resistance in ohm of one copper conductor, there but not back. */
export function copperResistance({ areaMm2, lengthM, temperatureC }: { areaMm2: number; lengthM: number; temperatureC: number }): number {
  const warmth = 1 + COPPER.perKelvin * (temperatureC - COPPER.referenceC);
  return ((COPPER.microohmMetre * lengthM) / areaMm2) * warmth;
}
