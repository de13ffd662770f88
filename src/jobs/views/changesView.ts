import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { Asking } from '../../check/Asking.ts';
import { nameAt } from '../../check/nameAt.ts';
import type { ChangeStep } from '../../check/quantities/changeStep.ts';
import { lensChange } from '../../check/quantities/lensChange.ts';
import { type MotorPlaces, motorPlaces } from '../../check/quantities/motorPlaces.ts';
import { glassesOf } from '../../check/subjects.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';

/** Minutes from each lens of a setup to each other, and where its motor may stay. */
export interface ChangesView {
  readonly glasses: readonly { readonly id: string; readonly name: string }[];
  /** By rows: from; by columns: to; nothing from a lens to itself. */
  readonly minutes: readonly (readonly (number | undefined)[])[];
  /** Likewise: whether all of it can be done as built. */
  readonly finishes: readonly (readonly boolean[])[];
  readonly motor: MotorWindows | undefined;
}

/** Between which places along its rod the motor meets each lens, and the one place that serves most of them. */
export interface MotorWindows {
  /** Where the millimetres begin, to follow them. */
  readonly from: string;
  readonly atMm: number;
  readonly windows: readonly { readonly name: string; readonly lowMm: number; readonly highMm: number; readonly served: boolean }[];
  /** Lenses that it meets nowhere, and why, to follow the name. */
  readonly without: readonly { readonly name: string; readonly says: string }[];
}

/** One change, step by step. */
export interface ChangeView {
  readonly fromName: string;
  readonly toName: string;
  readonly minutes: number;
  /** The minutes within the bounds of their model. */
  readonly low: number;
  readonly high: number;
  readonly steps: readonly ChangeStep[];
  /** Whether all of it can be done as built. */
  readonly finishes: boolean;
}

export function changesView(ledger: Ledger, setup: string): ChangesView {
  const asking = new Asking(ledger);
  const ids = glassesOf(ledger, setup);
  const all = ids.map((from) => ids.map((to) => (from === to ? undefined : lensChange(asking, { setup, glass: from }, { setup, glass: to }))));
  const motor = motorPlaces(asking, setup);
  return {
    glasses: ids.map((id) => ({ id, name: nameAt(ledger, 'glasses', id) })),
    minutes: all.map((row) => row.map((one) => one?.minutes)), finishes: all.map((row) => row.map((one) => one?.finishes ?? true)),
    motor: motor && windowsOf(ledger, setup, motor),
  };
}

function windowsOf(ledger: Ledger, setup: string, { from, all, best, nowhere }: MotorPlaces): MotorWindows {
  const name = (glass: string) => nameAt(ledger, 'glasses', glass);
  return {
    from, atMm: best.atMm, windows: all.map(({ glass, low, high }) => ({ name: name(glass), lowMm: low, highMm: high, served: best.serves.includes(glass) })),
    without: nowhere.map((glass) => ({ name: name(glass), says: placeSetup(ledger, setup, glass).meshes.length > 0 ? 'meets it nowhere as built' : 'where it meets it is not entered' })),
  };
}

export function changeView(ledger: Ledger, setup: string, from: string, to: string): ChangeView {
  return { fromName: nameAt(ledger, 'glasses', from), toName: nameAt(ledger, 'glasses', to), ...lensChange(new Asking(ledger), { setup, glass: from }, { setup, glass: to }) };
}
