import { writeCsv } from './csv.ts';
import { checksOf, tickKey } from './prep/checks.ts';
import { paper, textFile } from './paper.ts';
import { pdfFile, sheetFor } from './printed.ts';
import { stateOf } from './sheet/setupState.ts';
import { SIZE } from './sheet/look.ts';
import { table } from './sheet/table.ts';
import { inSystem } from '../units/print.ts';

export const prepChecklist = paper({
  id: 'checklist',
  says: 'Prep checklist',
  per: 'setup',
  make: (making) => {
    const groups = checksOf(making);
    const ticks = (making.ledger.at('ticks') ?? {}) as Readonly<Record<string, string>>;
    const sheet = sheetFor(making, 'Prep checklist');
    stateOf(sheet, making);
    for (const { says, how, checks } of groups) {
      sheet.heading(says);
      if (how !== '') sheet.text(how, { sizePt: SIZE.small });
      table(sheet, [{ says: 'what', share: 4 }, { says: 'should be', share: 5 }, { says: 'found', mm: 30 }],
        checks.map(({ id, says: what, expect, measure }) => ({ cells: [{ text: what, box: true }, expect, ticks[tickKey(making.setup, id)] !== undefined ? `done ${ticks[tickKey(making.setup, id)] ?? ''}` : measure === undefined ? '' : { text: `_______ ${inSystem({ value: 1, unit: measure.unit }, 'metric').unit}`, quiet: true }] })));
    }
    const rows = groups.flatMap(({ says, checks }) => checks.map((check) => [says, check.says, check.expect, check.measure?.says, check.measure?.path, '', ticks[tickKey(making.setup, check.id)]]));
    return [pdfFile(making, `${making.setup}/checklist.pdf`, 'Prep checklist', sheet.pages()), textFile(`${making.setup}/checklist.csv`, writeCsv(['group', 'what', 'should be', 'measures', 'figure', 'found', 'done'], rows))];
  },
});
