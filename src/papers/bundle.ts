import { type Zippable, zipSync } from 'fflate';
import { Asking } from '../check/Asking.ts';
import { Checker } from '../check/Checker.ts';
import { questions } from '../check/questions/index.generated.ts';
import { glassesOf } from '../check/subjects.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { amountsInWords } from '../units/amountsInWords.ts';
import { kinds } from './kinds.generated.ts';
import type { Making, MakingOfSetup, PaperFile, PaperKind, Press } from './paper.ts';

/** What is wanted of all the papers. */
export interface Wanted {
  /** Ids; every setup where not given. */
  readonly setups?: readonly string[];
  readonly kinds?: readonly string[];
}

/** One step of the work: a kind of paper, for a setup or for the shoot. */
export interface Step {
  readonly kind: PaperKind;
  readonly setup: string | undefined;
  /** What is being made, in words. */
  readonly says: string;
}

/** Makes papers one after the other, so that whoever asked can show how far it is, and stop. */
export class Papers {
  readonly #making: Making;
  readonly steps: readonly Step[];

  constructor(shoot: Shoot, press: Press, wanted: Wanted = {}, checker = new Checker(shoot, questions)) {
    this.#making = { press, ledger: checker.ledger, asking: new Asking(checker.ledger), answers: checker.answers().map((answer) => ({ ...answer, says: amountsInWords(answer.says, press.system) })), shoot: shoot.title, revision: shoot.revision ?? '0' };
    const setups = wanted.setups ?? Object.keys(shoot.setups);
    this.steps = kinds
      .filter(({ id }) => wanted.kinds?.includes(id) ?? true)
      .flatMap((kind): Step[] => (kind.per === 'shoot' ? [{ kind, setup: undefined, says: kind.says }] : setups.map((setup) => ({ kind, setup, says: `${kind.says}: ${shoot.setups[setup]?.name ?? setup}` }))));
  }

  async make({ kind, setup }: Step): Promise<readonly PaperFile[]> {
    return kind.per === 'shoot' ? kind.make(this.#making) : kind.make(this.#ofSetup(setup ?? ''));
  }

  #ofSetup(setup: string): MakingOfSetup {
    const { ledger } = this.#making;
    return { ...this.#making, setup, setupName: (ledger.at(`setups/${setup}/name`) as string | undefined) ?? setup, glasses: glassesOf(ledger, setup) };
  }
}

/** Every kind of paper there is. */
export const paperKinds: readonly PaperKind[] = kinds;

/** All files in one, with the same time on each, so that the same papers give the same bytes. */
export function bundle(files: readonly PaperFile[]): Uint8Array {
  const stored = /\.(pdf|png|3mf|zip|glb)$/;
  const entries = files.toSorted((a, b) => (a.path < b.path ? -1 : 1)).map(({ path, bytes }): [string, Zippable[string]] => [path, [bytes, { mtime: '1980-01-01T12:00:00', level: stored.test(path) ? 0 : 6 }]]);
  return zipSync(Object.fromEntries(entries));
}
