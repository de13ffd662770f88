import { typicalPack } from '../../calc/power/typicalPack.ts';
import type { Curve } from '../../calc/power/discharge.ts';
import type { Figure } from '../../shoot/ledger/figures.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import { chemistry, coldFactor } from '../../standards/batteryClasses.ts';
import type { Asking } from '../Asking.ts';

/** A pack at the temperature of the day: what the sums of discharge take. */
export interface PackState {
  readonly part: PartView;
  readonly temperatureC: number;
  readonly nominalV: number;
  readonly wattHours: number;
  readonly openCircuitV: Curve;
  readonly fullV: number;
  readonly capacityAh: number;
  readonly internalOhm: number;
  readonly cutoffV: number;
  readonly maxA: Figure | undefined;
  /** What is not of the pack's own figures, in words. */
  readonly assumed: readonly string[];
}

/**
 * A pack's own figures; where it states none, those of its chemistry. What cold does is the pack's own at 0 °C, spread over the
 * temperatures as the general factors are; cells are taken to be as cold as the day, as they are in the morning.
 */
export function packState(asking: Asking, part: PartView, temperatureC: number): PackState {
  return asking.ledger.cell(`pack|${part.id}|${temperatureC}`, () => {
    const { nominalV, capacityAh } = asking.figures(part, { nominalV: 'pack/nominalV', capacityAh: 'pack/capacityAh' });
    const kind = chemistry((part.read('pack/chemistry') as string | undefined) ?? 'lithium-ion')?.name ?? 'lithium-ion';
    const typical = typicalPack({ chemistry: kind, nominalV: nominalV.value, capacityAh: capacityAh.value, temperatureC: Math.max(-30, Math.min(60, temperatureC)) });
    const curve = part.read('pack/openCircuit') as Curve | undefined;
    const openCircuitV = curve ?? typical.openCircuitV;
    const ohm = part.figure('pack/internalOhm');
    const cutoff = part.figure('pack/cutoffV');
    const cold = coldOf(part, temperatureC);
    return {
      part, temperatureC, nominalV: nominalV.value, wattHours: nominalV.value * capacityAh.value, openCircuitV,
      fullV: Math.max(...openCircuitV.map(([, volts]) => volts)),
      capacityAh: capacityAh.value * cold.capacityShare,
      internalOhm: ohm === undefined ? typical.internalOhm : ohm.value * cold.resistanceRatio,
      cutoffV: cutoff?.value ?? typical.cutoffV,
      maxA: part.figure('pack/maxA'),
      assumed: assumedOf({ curve: curve === undefined, ohm: ohm === undefined, cutoff: cutoff === undefined }, kind),
    };
  });
}

function assumedOf(missing: { curve: boolean; ohm: boolean; cutoff: boolean }, kind: string): string[] {
  const names = [missing.curve ? 'voltage curve' : '', missing.ohm ? 'resistance' : '', missing.cutoff ? 'cut-off' : ''].filter((one) => one !== '');
  return names.length === 0 ? [] : [`${names.join(', ')} typical of ${kind}`];
}

/** The pack's own cold figures are for 0 °C; between and beyond, the general factors give the shape. */
function coldOf(part: PartView, temperatureC: number): { resistanceRatio: number; capacityShare: number } {
  const [here, atZero] = [coldFactor(temperatureC), coldFactor(0)];
  const ratio = part.figure('pack/coldOhmRatio')?.value ?? atZero.resistanceRatio.value;
  const share = part.figure('pack/coldCapacityShare')?.value ?? atZero.capacityShare.value;
  const colder = (here.resistanceRatio.value - 1) / (atZero.resistanceRatio.value - 1);
  const less = (1 - here.capacityShare.value) / (1 - atZero.capacityShare.value);
  return { resistanceRatio: Math.max(0.2, 1 + colder * (ratio - 1)), capacityShare: Math.max(0.05, 1 - less * (1 - share)) };
}

/** State of charge at a voltage at rest; 0 below the curve, 1 above it. */
export function socAtRest({ openCircuitV }: PackState, volts: number): number {
  const curve = openCircuitV.toSorted(([a], [b]) => a - b);
  const above = curve.findIndex(([, v]) => v >= volts);
  const [upper, lower] = [curve[above], curve[above - 1]];
  if (upper === undefined) return 1;
  if (lower === undefined) return 0;
  return lower[0] + ((upper[0] - lower[0]) * (volts - lower[1])) / (upper[1] - lower[1]);
}
