import { Papers, bundle, paperKinds } from '../papers/bundle.ts';
import { type PaperFile, type PaperKind, type SolidsMaker, textFile } from '../papers/paper.ts';
import type { PaperSize } from '../papers/sheet/look.ts';
import { type FontFiles, Fonts } from '../papers/type/Fonts.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { writeShoot } from '../shoot/write.ts';
import type { System } from '../units/print.ts';

/** Which papers are wanted, and how. */
export interface PapersWanted {
  readonly kinds: readonly string[];
  readonly setups: readonly string[];
  readonly paper: PaperSize;
  readonly system: System;
  /** Printed on every page: year, month, day. */
  readonly date: string;
}

export interface PapersProgress {
  readonly done: number;
  readonly of: number;
  /** What is being made. */
  readonly says: string;
}

export interface PapersMade {
  readonly files: readonly PaperFile[];
  /** All of them and the shoot itself in one. */
  readonly zip: Uint8Array;
  /** Letters that the fonts lack. */
  readonly missing: readonly string[];
}

/** Every kind of paper: what it is, and whether there is one for each setup. */
export const kindsOfPaper = (): { readonly id: string; readonly says: string; readonly per: PaperKind['per'] }[] => paperKinds.map(({ id, says, per }) => ({ id, says, per }));

export async function makePapers(
  shoot: Shoot, fontFiles: FontFiles, { kinds, setups, paper, system, date }: PapersWanted, report: (progress: PapersProgress) => void, solids?: SolidsMaker,
): Promise<PapersMade> {
  const fonts = new Fonts(fontFiles);
  const papers = new Papers(shoot, { fonts, paper, system, date, solids }, { kinds, setups });
  const files: PaperFile[] = [];
  for (const [done, step] of papers.steps.entries()) {
    report({ done, of: papers.steps.length, says: step.says });
    files.push(...(await papers.make(step)));
  }
  return { files, zip: bundle([...files, textFile('shoot.shoot.json', writeShoot(shoot))]), missing: [...fonts.missing] };
}
