import type { Answer, Discipline } from '../../check/answer.ts';
import { DISCIPLINES } from '../../check/answer.ts';
import { worstFirst } from '../../check/ranking.ts';
import type { MakingOfSetup } from '../paper.ts';
import { SIZE } from './look.ts';
import type { Sheet } from './Sheet.ts';

/** The answers that concern a setup, worst first. */
export function answersOf({ answers, ledger, setup }: MakingOfSetup, disciplines: readonly Discipline[] = DISCIPLINES): Answer[] {
  const builds = new Set([ledger.at(`setups/${setup}/camera`), ...((ledger.at(`setups/${setup}/stations`) ?? []) as readonly string[])]);
  return answers
    .filter(({ subject, discipline }) => disciplines.includes(discipline) && (subject.setup === setup || (subject.setup === undefined && builds.has(subject.build))))
    .toSorted(worstFirst);
}

/** What amounts to a state: something fails; something is not known; else nothing to say. */
export function stateOf(sheet: Sheet, making: MakingOfSetup, disciplines?: readonly Discipline[]): void {
  const answers = answersOf(making, disciplines);
  const failing = answers.filter(({ verdict }) => verdict === 'fails');
  const unknown = answers.filter(({ verdict }) => verdict === 'unknown');
  if (failing.length > 0) sheet.alarm('fails', disciplines === undefined ? 'This build fails' : 'Something here fails', listed(failing));
  else if (unknown.length > 0) sheet.alarm('unknown', 'Not all of this is known', listed(unknown));
  else if (disciplines === undefined) sheet.text(`Nothing fails in what was asked: ${answers.length} answers.`, { sizePt: SIZE.small });
}

/** The findings in a few lines; what is told twice is told once. */
function listed(answers: readonly Answer[]): string {
  const says = [...new Set(answers.map((answer) => answer.says))];
  const shown = says.slice(0, 4).join('\n');
  return says.length <= 4 ? shown : `${shown}\nand ${says.length - 4} more: see the check.`;
}
