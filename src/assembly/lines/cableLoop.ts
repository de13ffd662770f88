import { conductor } from '../../calc/power/conductor.ts';
import { wire } from '../../calc/power/wire.ts';
import { assume } from '../../shoot/ledger/figures.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { power as assumed } from '../../standards/assumptions/power.ts';
import { STRANDING_SHARE } from '../../standards/wireGauges.ts';
import { printNumber } from '../../units/print.ts';
import type { WiredLine } from './wiring.ts';

/** Resistance there and back of a supply cable with its plugs. */
export interface Loop {
  readonly ohm: number;
  readonly lowOhm: number;
  readonly highOhm: number;
  /** What it is reckoned from, in words. */
  readonly says: string;
}

const COPPER_C = 20; // a lead warmed by its own current to 40 °C has 8 % more; within the doubt of its plugs

/** Of a line still without a cable the usual length and gauge are taken. */
export function loopOf(ledger: Ledger, { cable, direct }: WiredLine): Loop {
  const contact = assume(ledger, assumed.contactOhm);
  if (direct === true) return { ohm: 2 * contact.value, lowOhm: 2 * contact.low, highOhm: 2 * contact.high, says: 'a plug' };
  const lengthM = (cable?.figure('cable/lengthMm')?.value ?? assume(ledger, assumed.unfoundCableMm).value) / 1000;
  const areaMm2 = cable?.figure('cable/areaMm2')?.value;
  const stated = cable?.facet('cable')?.awg;
  const assumedAwg = assume(ledger, assumed.wireGauge);
  const of = (awg: number) => 2 * ohmOf({ areaMm2, awg: stated ?? awg, lengthM });
  const [ohm, lowOhm, highOhm] = [of(assumedAwg.value), of(assumedAwg.low), of(assumedAwg.high)];
  const gauge = areaMm2 !== undefined ? `${printNumber(areaMm2)} mm²` : stated !== undefined ? `gauge ${stated}` : `gauge ${assumedAwg.value} assumed`;
  return { ohm: ohm + 2 * contact.value, lowOhm: lowOhm + 2 * contact.low, highOhm: highOhm + 2 * contact.high, says: `${printNumber(lengthM)} m of ${gauge}` };
}

/** Gauges are whole numbers within the table's reach; one beyond is taken at its end. */
function ohmOf({ areaMm2, awg, lengthM }: { areaMm2: number | undefined; awg: number; lengthM: number }): number {
  if (areaMm2 !== undefined) return conductor({ areaMm2, lengthM, temperatureC: COPPER_C }).resistanceOhm;
  return wire({ awg: Math.round(awg), lengthM, temperatureC: COPPER_C }).resistanceOhm * (1 + STRANDING_SHARE.value);
}
