import { NoAnswer } from '../calc/calculator.ts';
import { Ledger } from '../shoot/ledger/Ledger.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import type { Answer, Subject } from './answer.ts';
import { Asking, type Cures } from './Asking.ts';
import { NotEntered } from './NotEntered.ts';
import { inOrder } from './cures.ts';
import { inSentences, quoting } from './named.ts';
import { namesOf } from './namesOf.ts';
import { type AnyQuestion, disciplineOf } from './question.ts';

/** Asks questions of a shoot and keeps the answers until an edit touches what they rest on. */
export class Checker {
  readonly ledger: Ledger;
  readonly #questions: readonly AnyQuestion[];
  readonly #asking: Asking;
  readonly #studied = new Set<string>();
  readonly #asked = new Map<string, { readonly question: AnyQuestion; readonly subject: Subject }>();
  #quote: ReturnType<typeof quoting>;
  #read = new WeakMap<Answer, Answer>();

  constructor(shoot: Shoot, questions: readonly AnyQuestion[], cures: Cures = 'with cures') {
    this.ledger = new Ledger(shoot);
    this.#questions = questions;
    this.#asking = new Asking(this.ledger, cures);
  }

  /** Takes the next state of the shoot. Only answers that rest on what changed will be asked again. */
  update(shoot: Shoot): void {
    this.ledger.update(shoot);
  }

  /** Every answer, questions in their order. Studied ones that have not run, or no longer hold, are pending. */
  answers(): Answer[] {
    return this.#questions.flatMap((question) =>
      this.#subjects(question).flatMap(({ subject, key }) => {
        const waits = question.kind === 'studied' && !(this.#studied.has(key) && this.ledger.isFresh(key));
        return (waits ? pending(this.ledger, question, key, subject) : this.#ask(question, key, subject)) ?? [];
      }),
    );
  }

  /** Runs one studied question, or asks one immediate question, by its key. `undefined` where it does not arise. */
  study(key: string): Answer | undefined {
    const question = this.#questions.find(({ id }) => key.split('|', 1)[0] === id);
    const asked = question && this.#subjects(question).find((one) => one.key === key);
    if (question === undefined || asked === undefined) return undefined;
    this.#studied.add(key);
    this.#asked.set(key, { question, subject: asked.subject });
    return this.#ask(question, key, asked.subject) ?? undefined;
  }

  /** Asks once more what was asked by its key, without a look at whether, changed as the shoot is, it would still arise: to look costs more than to ask. */
  again(key: string): Answer | undefined {
    const asked = this.#asked.get(key);
    return asked === undefined ? undefined : (this.#ask(asked.question, key, asked.subject) ?? undefined);
  }

  #subjects(question: AnyQuestion): readonly Keyed[] {
    try {
      return this.ledger.cell(`subjects|${question.id}`, () => question.subjects(this.ledger).map((subject) => ({ subject, key: keyOf(question.id, subject) })));
    } catch (thrown) {
      if (thrown instanceof NotEntered) return [];
      throw thrown;
    }
  }

  /** As it is read. Names are looked up outside the answer's own cell: another name elsewhere makes it no less true. */
  #ask(question: AnyQuestion, key: string, subject: Subject): Answer | null {
    const answer = this.#judge(question, key, subject);
    const quote = quoting(this.ledger);
    if (answer === null || quote === undefined) return answer;
    if (quote !== this.#quote) this.#read = new WeakMap();
    this.#quote = quote;
    const read = this.#read.get(answer) ?? inSentences(answer, quote);
    this.#read.set(answer, read);
    return read;
  }

  #judge(question: AnyQuestion, key: string, subject: Subject): Answer | null {
    return this.ledger.cell(key, () => {
      const frame = frameOf(this.ledger, question, key, subject);
      try {
        const judgement = question.ask(this.#asking, subject);
        if (judgement === null) return null;
        const sound = judgement.use === undefined || Number.isFinite(judgement.use);
        if (!sound) return { ...frame, verdict: 'unknown', unknown: 'could not judge', says: 'The sum did not come out as a number.' };
        const unknown = judgement.missing === undefined ? ('could not judge' as const) : ('not entered' as const);
        const mends = judgement.mends === undefined ? undefined : { mends: inOrder(judgement.mends) };
        return Object.assign(frame, judgement, mends, judgement.verdict === 'unknown' ? { unknown } : undefined);
      } catch (thrown) {
        return { ...frame, ...unknownFrom(thrown) };
      }
    });
  }
}

interface Keyed {
  readonly subject: Subject;
  readonly key: string;
}

/** Question and subject, in a stable order of its parts. */
export function keyOf(question: string, subject: Subject): string {
  let key = question;
  for (const [kind, id] of Object.entries(subject)) if (id !== undefined) key += `|${kind}=${String(id)}`;
  return key;
}

type Frame = Pick<Answer, 'key' | 'question' | 'discipline' | 'asks' | 'subject' | 'about' | 'sources'>;

function frameOf(ledger: Ledger, question: AnyQuestion, key: string, subject: Subject): Frame {
  return { key, question: question.id, discipline: disciplineOf(question.id), asks: question.asks, subject, about: namesOf(ledger, subject), sources: question.sources };
}

function pending(ledger: Ledger, question: AnyQuestion, key: string, subject: Subject): Answer {
  return { ...frameOf(ledger, question, key, subject), verdict: 'pending', says: 'Not studied yet.' };
}

/** One answer that cannot be given takes nothing else down. */
function unknownFrom(thrown: unknown): Pick<Answer, 'verdict' | 'unknown' | 'says' | 'missing'> {
  if (thrown instanceof NotEntered) {
    const names = thrown.missing.map(({ says }) => says);
    return { verdict: 'unknown', unknown: 'not entered', says: `Not entered yet: ${names.join('; ')}.`, missing: thrown.missing };
  }
  if (thrown instanceof NoAnswer) return { verdict: 'unknown', unknown: 'could not judge', says: thrown.message };
  const message = thrown instanceof Error ? thrown.message : String(thrown);
  return { verdict: 'unknown', unknown: 'could not judge', says: `This could not be worked out: ${message}` };
}
