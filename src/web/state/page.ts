import type { AnswerLine } from '../../jobs/answers.ts';
import type { Forms } from '../../jobs/Forms.ts';
import type { History } from '../../jobs/ShootKeeper.ts';
import type { Fault } from '../../faults/Fault.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { Store, useStore } from './Store.ts';

/** Where the shoot's text is kept, and whether what is on screen is there. */
export type Kept = 'kept' | 'keeping' | 'not kept' | 'changed outside';

export interface Notice {
  readonly says: string;
  readonly kind: 'plain' | 'wrong';
  readonly faults?: readonly Fault[];
}

export interface Page {
  /** `starting` until something is open or it is known that nothing is. */
  readonly phase: 'starting' | 'nothing open' | 'open';
  readonly shoot: Shoot | undefined;
  readonly answers: ReadonlyMap<string, AnswerLine>;
  readonly revision: number;
  readonly history: History;
  /** Keys of the answers that the last edit changed. */
  readonly moved: ReadonlySet<string>;
  readonly kept: Kept;
  /** The name of the file it is saved to; nothing where it is kept in the browser. */
  readonly file: string | undefined;
  readonly notice: Notice | undefined;
  readonly busy: boolean;
  readonly forms: Forms | undefined;
  readonly studying: { readonly done: number; readonly of: number } | undefined;
}

export const page = new Store<Page>({
  phase: 'starting', shoot: undefined, answers: new Map(), revision: 0, history: {}, moved: new Set(), kept: 'kept', file: undefined, notice: undefined, busy: false, forms: undefined, studying: undefined,
});

export const usePage = <Picked>(select: (state: Page) => Picked): Picked => useStore(page, select);

/** The shoot on the table. Only drawn while one is open. */
export function useShoot(): Shoot {
  const shoot = usePage((state) => state.shoot);
  if (shoot === undefined) throw new Error('No shoot is open.');
  return shoot;
}
