import { zlibSync } from 'fflate';
import type { Mark, Page } from '../ink/Mark.ts';
import type { Fonts, Run } from '../type/Fonts.ts';
import { joined } from '../type/subset.ts';
import { PdfFonts } from './PdfFonts.ts';
import { pageStream } from './pageStream.ts';
import { PdfObjects, pdfText } from './PdfObjects.ts';

const POINTS_PER_MM = 72 / 25.4;

export interface PdfFacts {
  readonly title: string;
  readonly subject: string;
  /** Year, month, day: `2026-11-25`. */
  readonly date: string;
}

/** Pages as a PDF 1.7 file: text is text, fonts are inside, nothing is scaled on printing, the same pages give the same bytes. */
export function writePdf(pages: readonly Page[], fonts: Fonts, { title, subject, date }: PdfFacts): Uint8Array {
  const objects = new PdfObjects();
  const used = new PdfFonts();
  const tree = objects.reserve();
  const resources = objects.reserve();
  const kids = pages.map(({ widthMm, heightMm, marks }) => {
    const runs = (mark: Mark & { kind: 'text' }): readonly Run[] => fonts.runs(mark.face, mark.text);
    const content = objects.stream('', zlibSync(latin(pageStream(marks, heightMm, runs, used)), { level: 6 }));
    return objects.add(`<< /Type /Page /Parent ${tree} 0 R /MediaBox [0 0 ${points(widthMm)} ${points(heightMm)}] /Resources ${resources} 0 R /Contents ${content} 0 R >>`);
  });
  objects.fill(resources, `<< /Font << ${used.write(objects)} >> >>`);
  objects.fill(tree, `<< /Type /Pages /Count ${kids.length} /Kids [${kids.map((kid) => `${kid} 0 R`).join(' ')}] >>`);
  const catalogue = objects.add(`<< /Type /Catalog /Pages ${tree} 0 R /Lang (en-GB) /ViewerPreferences << /PrintScaling /None /DisplayDocTitle true >> >>`);
  const info = objects.add(`<< /Title ${pdfText(title)} /Subject ${pdfText(subject)} /Producer (Setworthy) /CreationDate (D:${date.replaceAll('-', '')}000000Z) >>`);
  return joined(objects.file(catalogue, info));
}

const points = (mm: number): string => (Math.round(mm * POINTS_PER_MM * 1000) / 1000).toString();

/** Content streams hold plain ASCII: letters stand in them as glyph numbers. */
export function latin(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let at = 0; at < text.length; at += 1) bytes[at] = text.codePointAt(at) ?? 63;
  return bytes;
}
