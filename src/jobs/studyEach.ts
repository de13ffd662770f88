import type { Answer } from '../check/answer.ts';
import { Checker } from '../check/Checker.ts';
import { questions } from '../check/questions/index.generated.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';

/** A studied answer, and the places of the shoot it read. */
export interface Studied {
  readonly key: string;
  /** Nothing where on a closer look the question does not arise. */
  readonly answer: Answer | undefined;
  readonly reads: readonly string[];
}

/** Runs studied questions one after the other on a shoot of its own. `report` is told of each. */
export function studyEach(shoot: Shoot, keys: readonly string[], report: (studied: Studied) => void): void {
  const checker = new Checker(shoot, questions);
  for (const key of keys) {
    const answer = checker.study(key);
    report({ key, answer, reads: checker.ledger.readsOf(key) });
  }
}
