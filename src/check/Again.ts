import type { Ledger } from '../shoot/ledger/Ledger.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import type { Answer } from './answer.ts';
import { Checker } from './Checker.ts';
import type { AnyQuestion } from './question.ts';

/**
 * Asks single answers over and over, each time of a shoot a little changed; cures are left out. What a change does not touch is kept from one time,
 * and one answer, to the next.
 */
export class Again {
  readonly #questions: AnyQuestion[] = [];
  #checker: Checker | undefined;

  /** The answer in a shoot as it is; `undefined` where it does not arise. */
  first(shoot: Shoot, question: AnyQuestion, key: string): Answer | undefined {
    if (!this.#questions.includes(question)) this.#questions.push(question);
    if (this.#checker === undefined) this.#checker = new Checker(shoot, this.#questions, 'without cures');
    else this.#checker.update(shoot);
    return this.#checker.study(key);
  }

  /** The same answer in a changed shoot. */
  changed(shoot: Shoot, key: string): Answer | undefined {
    this.#checker?.update(shoot);
    return this.#checker?.again(key);
  }

  /** What the answer that was asked last read, of the shoot at hand. */
  get ledger(): Ledger {
    if (this.#checker === undefined) throw new Error('Nothing has been asked yet.');
    return this.#checker.ledger;
  }
}
