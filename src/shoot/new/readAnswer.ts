import type { Fault, Outcome } from '../../faults/Fault.ts';
import { nearestName } from '../../faults/nearestName.ts';
import { readLength } from '../../units/length.ts';
import type { FirstAnswers, FirstQuestion } from './firstQuestions.ts';

/** An answer as people write it: a class by its id, `2,39` or `2.39:1` or `16:9`, `T2.8`, `5'6"`. `so` are the answers before it. */
export function readAnswer(question: FirstQuestion, typed: string, so?: Partial<FirstAnswers>): Outcome<string | number> {
  const text = typed.trim();
  if (text === '') return refuse({ path: '', message: 'Nothing is entered.', cure: cureFor(question, so) });
  if (question.kind === 'text') return { ok: true, value: text, warnings: [] };
  if (question.kind === 'class') return so === undefined ? { ok: true, value: text, warnings: [] } : chosenClass(question, text, so);
  if (question.kind === 'length') return lengthIn(question, text, so);
  const value = numberIn(text, question.written);
  const whole = question.written === 'whole';
  if (value > MOST) return refuse({ path: '', message: `"${text.slice(0, 60)}" cannot be meant.`, cure: cureFor(question, so) });
  if (Number.isFinite(value) && value > 0 && (!whole || Number.isInteger(value))) return { ok: true, value, warnings: [] };
  return refuse({ path: '', message: `"${text.slice(0, 60)}" is not a ${whole ? 'whole ' : ''}number above zero.`, cure: cureFor(question, so) });
}

/** Nought is the same in every unit, and an answer only where it means that nobody knows. */
function lengthIn(question: FirstQuestion, text: string, so?: Partial<FirstAnswers>): Outcome<number> {
  if (question.zero === true && /^0(?:[.,]0*)?$/.test(text)) return { ok: true, value: 0, warnings: [] };
  const length = readLength(text);
  if (length.ok && length.value === 0 && question.zero !== true) return refuse({ path: '', message: `"${text.slice(0, 60)}" cannot be meant.`, cure: cureFor(question, so) });
  return length.ok && length.value === Infinity && question.key !== 'distanceMm' ? refuse({ path: '', message: 'Nothing stands at infinity here.', cure: cureFor(question, so) }) : length;
}

/** Pixels of width are the largest number asked for. */
const MOST = 100_000;

const cureFor = (question: FirstQuestion, so: Partial<FirstAnswers> = {}): string => `Usual: ${question.usual(so)}.`;

function chosenClass(question: FirstQuestion, text: string, so: Partial<FirstAnswers>): Outcome<string> {
  const choices = question.choices?.(so) ?? [];
  const unfit = choices.includes(text) ? question.unfit?.(text, so) : undefined;
  const fit = choices.filter((one) => question.unfit?.(one, so) === undefined);
  if (unfit !== undefined) return refuse({ path: '', message: `"${text}" does not serve here: ${unfit}`, cure: `Choose from: ${fit.join(', ')}.` });
  if (choices.includes(text)) return { ok: true, value: text, warnings: [] };
  const near = nearestByNumber(text, choices) ?? nearestName(text, choices);
  return refuse({ path: '', message: `There is no "${text.slice(0, 60)}" to choose here.`, cure: near === undefined ? `Choose from: ${fit.join(', ')}.` : `Did you mean "${near}"?` });
}

/** Of the classes that are named alike but for their numbers, the one whose numbers are nearest by ratio: `block-1-7x` is a `block-1-75x` sooner than a `block-1-5x`. */
function nearestByNumber(text: string, choices: readonly string[]): string | undefined {
  const typed = numbered(text);
  const alike = choices.map((id) => ({ id, ...numbered(id) })).filter(({ stem, numbers }) => numbers.length > 0 && stem === typed.stem);
  const apart = (numbers: readonly number[]) => numbers.reduce((sum, one, at) => sum + Math.abs(Math.log(one / (typed.numbers[at] ?? one))), 0);
  return alike.toSorted((one, other) => apart(one.numbers) - apart(other.numbers))[0]?.id;
}

/** In an id a hyphen between two numbers is a decimal point. */
const NUMBER = /\d+(?:[-.,]\d+)?/g;
const numbered = (id: string) => ({ stem: id.toLowerCase().replaceAll(NUMBER, '#'), numbers: (id.match(NUMBER) ?? []).map((one) => Number(one.replace(/[-,]/, '.'))) });

/** As people write it. NaN where it is no number. */
function numberIn(text: string, written: FirstQuestion['written']): number {
  const plain = text.replaceAll(',', '.');
  if (written === 'T-stop') return Number(plain.replace(/^T\s*\/?\s*/i, '') || Number.NaN);
  const [across, down = '1', ...more] = written === 'aspect' ? plain.split(':') : [plain];
  return more.length > 0 || down.trim() === '' ? Number.NaN : Number(across) / Number(down);
}

const refuse = (fault: Fault): Outcome<never> => ({ ok: false, faults: [fault] });
