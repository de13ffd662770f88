import type { Page } from './ink/Mark.ts';
import type { Making, MakingOfSetup, PaperFile } from './paper.ts';
import { writePdf } from './pdf/writePdf.ts';
import { Sheet } from './sheet/Sheet.ts';

/** A sheet of a kind of paper, with the shoot, revision and date on it. */
export function sheetFor(making: Making & Partial<MakingOfSetup>, title: string, of = making.setupName ?? making.shoot, turned = false): Sheet {
  const { press, shoot, revision } = making;
  return new Sheet(press.fonts, press.paper, { title, of, shoot, revision, date: press.date }, turned);
}

/** Pages as a PDF file of the bundle. */
export function pdfFile(making: Making & Partial<MakingOfSetup>, path: string, title: string, pages: readonly Page[]): PaperFile {
  const of = making.setupName ?? making.shoot;
  return { path, bytes: writePdf(pages, making.press.fonts, { title: `${title}: ${of}`, subject: `${making.shoot}, revision ${making.revision}`, date: making.press.date }) };
}
