import type { Answer } from '../../check/answer.ts';
import type { MakingOfSetup } from '../paper.ts';
import { SIZE } from '../sheet/look.ts';
import { answersOf } from '../sheet/setupState.ts';
import type { Sheet } from '../sheet/Sheet.ts';
import { table } from '../sheet/table.ts';
import { loadLine, verdictMark } from '../sheet/verdictMarks.ts';

const MOST = 24;
const ROW_MM = 5.4;
const SCALE_MM = 44;

/** How deep each thing sits, worst first: what has a use on the load line, what has none below it in words. */
export function findings(sheet: Sheet, making: MakingOfSetup): void {
  const amiss = answersOf(making).filter(({ verdict }) => verdict !== 'good' && verdict !== 'pending');
  const worst = [...new Map(amiss.map((answer) => [answer.says, answer])).values()];
  if (worst.length === 0) return;
  sheet.heading('How deep it sits: the line at 1 is as far as it goes');
  const scaled = worst.filter(({ use }) => use !== undefined).slice(0, MOST);
  for (const answer of scaled) row(sheet, answer);
  const rest = worst.filter(({ use }) => use === undefined);
  if (rest.length > 0) table(sheet, [{ says: 'without a scale', share: 1 }], rest.slice(0, MOST).map(({ says, verdict }) => ({ cells: [{ text: says, verdict }] })), SIZE.small);
  const more = Math.max(0, worst.filter(({ use }) => use !== undefined).length - MOST) + Math.max(0, rest.length - MOST);
  if (more > 0) sheet.text(`and ${more} more: see the check.`, { sizePt: SIZE.small });
}

function row(sheet: Sheet, { says, use = 0, verdict }: Answer): void {
  const room = sheet.widthMm - SCALE_MM - 20;
  const lines = sheet.fonts.lines('regular', SIZE.small, says, room);
  const height = Math.max(ROW_MM, lines.length * 3.5 + 1.8);
  sheet.block(height, (y) => {
    const right = sheet.left + sheet.widthMm;
    sheet.put(...verdictMark(verdict, sheet.left + 1.6, y + 2.4), ...lines.map((text, at) => ({ kind: 'text' as const, text, x: sheet.left + 5, y: y + 3.3 + at * 3.5, face: 'regular' as const, sizePt: SIZE.small })));
    sheet.put(...loadLine(use, verdict, { x: right - SCALE_MM - 10, y: y + 2.4, widthMm: SCALE_MM }), { kind: 'text', text: use >= 100 ? '>99' : use.toFixed(use >= 10 ? 1 : 2), x: right, y: y + 3.3, face: 'strong', sizePt: SIZE.small, align: 'end' });
  });
}
