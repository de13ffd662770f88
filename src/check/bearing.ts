import type { Figure } from '../shoot/ledger/figures.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { Again } from './Again.ts';
import type { Answer } from './answer.ts';
import { type Doubt, withFigure } from './doubt.ts';
import type { AnyQuestion } from './question.ts';
import { restsOn } from './restsOn.ts';

/**
 * Of the figures an answer rests on, those in doubt that it would change with, what moves it most first. The others were looked at on
 * the way, to tell lines, ports or modes apart, or to work out a cure, and could be anything within their bounds.
 */
export function bearingOn(shoot: Shoot, question: AnyQuestion, key: string, doubt: Doubt | undefined, again = new Again()): Figure[] {
  if (doubt !== undefined) return doubt.by.map(({ figure }) => figure);
  const answer = again.first(shoot, question, key);
  if (answer === undefined) return [];
  const differsAt = (figure: Figure, value: number): boolean => differs(answer, again.changed(withFigure(shoot, figure.path, value), key));
  return restsOn(again.ledger, key).filter((figure) => figure.low < figure.high && (differsAt(figure, figure.low) || differsAt(figure, figure.high)));
}

function differs(one: Answer, other: Answer | undefined): boolean {
  return other?.verdict !== one.verdict || other.needs?.amount.value !== one.needs?.amount.value || other.has?.amount.value !== one.has?.amount.value;
}
