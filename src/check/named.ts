/**
 * A name that holds a comma breaks the sentence it stands in: "lift Handheld, alone to the chest". In what an answer says it stands in quotation
 * marks. That is done here for all answers, once they are worked out, so that questions, labels and the search go on with the bare name.
 */
import type { Ledger } from '../shoot/ledger/Ledger.ts';
import type { Answer, Mend, Side } from './answer.ts';

/** One name as it stands in a sentence. */
export const named = (name: string): string => (name.includes(',') ? `“${name}”` : name);

type Quote = (text: string) => string;

/** Puts every name of the shoot that holds a comma in quotation marks; `undefined` where there is none. */
export function quoting(ledger: Ledger): Quote | undefined {
  return ledger.cell('names that hold a comma', () => {
    // The longest first: a name may begin with another. Not where it stands in quotation marks already, nor within a word.
    const names = namesIn(ledger).filter((name) => name.includes(',')).toSorted((a, b) => b.length - a.length);
    if (names.length === 0) return undefined;
    const found = new RegExp(String.raw`(?<![\u201C\p{L}\p{N}])(?:${names.map(literally).join('|')})(?![\u201D\p{L}\p{N}])`, 'gu');
    return (text) => text.replace(found, (name) => `“${name}”`);
  });
}

const literally = (name: string): string => name.replaceAll(/[$()*+./?[\\\]^{|}]/g, String.raw`\$&`);

function namesIn(ledger: Ledger): string[] {
  const at = (path: string) => ledger.keys(path).flatMap((id) => (ledger.at(`${path}/${id}/name`) as string | undefined) ?? []);
  const pieces = (kind: string) => ledger.keys(kind).flatMap((id) => at(`${kind}/${id}/pieces`));
  return [...new Set([...['kit/parts', 'kit/copies', 'builds', 'glasses', 'setups', 'shots', 'days', 'crew'].flatMap(at), ...pieces('builds'), ...pieces('glasses')])];
}

/** An answer as it is read: all its sentences, none of its labels. */
export function inSentences(answer: Answer, quote: Quote): Answer {
  const { says, needs, has, steps, mends, notes, missing } = answer;
  return {
    ...answer,
    says: quote(says),
    ...(needs && { needs: sideIn(needs, quote) }),
    ...(has && { has: sideIn(has, quote) }),
    ...(steps && { steps: steps.map((step) => ({ ...step, says: quote(step.says) })) }),
    ...(mends && { mends: mends.map((mend) => mendIn(mend, quote)) }),
    ...(notes && { notes: notes.map(quote) }),
    ...(missing && { missing: missing.map((one) => ({ ...one, says: quote(one.says) })) }),
  };
}

const sideIn = (side: Side, quote: Quote): Side => ({ ...side, from: quote(side.from) });

function mendIn(mend: Mend, quote: Quote): Mend {
  const { says, costs, edit } = mend;
  return { ...mend, says: quote(says), ...(costs !== undefined && { costs: quote(costs) }), ...(edit && { edit: { ...edit, says: quote(edit.says) } }) };
}
