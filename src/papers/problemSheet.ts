import { PLUG_CAUTION } from '../check/quantities/lineWords.ts';
import { paper } from './paper.ts';
import { problemsOf } from './prep/problems.ts';
import { pdfFile, sheetFor } from './printed.ts';
import { SIZE } from './sheet/look.ts';
import { tickBox } from './sheet/verdictMarks.ts';

export const problemSheet = paper({
  id: 'problems',
  says: 'Problem sheet',
  per: 'setup',
  make: (making) => {
    const sheet = sheetFor(making, 'Problem sheet', `${making.setupName}: look here, in this order`);
    sheet.text(PLUG_CAUTION, { face: 'strong' });
    for (const { says, look } of problemsOf(making)) {
      const wanted = 14 + look.length * 5.2;
      if (wanted < 200) sheet.keep(wanted);
      sheet.heading(says);
      look.forEach((step, at) => {
        sheet.keep(6);
        sheet.put(tickBox(sheet.left, sheet.y + 2.4, 2.6), { kind: 'text', text: String(at + 1), x: sheet.left + 8.6, y: sheet.y + 3.3, face: 'strong', sizePt: SIZE.body, align: 'end' });
        sheet.text(step, { indentMm: 11, afterMm: 0.7 });
      });
    }
    return [pdfFile(making, `${making.setup}/problems.pdf`, 'Problem sheet', sheet.pages())];
  },
});
