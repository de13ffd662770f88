import type { Fault, Outcome } from '../faults/Fault.ts';
import { toldOnce } from '../faults/toldOnce.ts';

/** More than these are not read at once; mending the first often mends the rest. */
const MOST_SHOWN = 100;

/** Ends a command because of what the user gave it: the faults are printed, nothing is written, the exit code is 2. */
export class Refusal extends Error {
  readonly faults: readonly Fault[];

  /** `where` is the file or argument the faults are in. */
  constructor(where: string, faults: readonly Fault[]) {
    const at = where === '' ? '' : `${where}: `;
    const told = toldOnce(faults).map((text) => `${at}${text}`);
    super([...told.slice(0, MOST_SHOWN), ...(told.length > MOST_SHOWN ? [`${at}${told.length - MOST_SHOWN} more faults are not shown.`] : [])].join('\n'));
    this.name = 'Refusal';
    this.faults = faults;
  }
}

/** The value of an outcome, or a refusal that says where its faults are. */
export function valueOrRefuse<T>(outcome: Outcome<T>, where: string): T {
  if (outcome.ok) return outcome.value;
  throw new Refusal(where, outcome.faults);
}

/** Somebody who was asked pressed ctrl-C or ctrl-D instead of answering. */
export class Stopped extends Error {}
