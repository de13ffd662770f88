import { type Figure, figureOf } from '../../shoot/ledger/figures.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { StatedFigure } from '../../shoot/schema/basics.ts';

/** A figure of the shoot itself, of a shot, a day, a viewer or the needs: what is wanted, sure as a sheet. */
export function shootFigure(ledger: Ledger, path: string): Figure | undefined {
  const stated = ledger.at(path) as StatedFigure | undefined;
  return stated === undefined ? undefined : figureOf(stated, path, 'sheet');
}

/** The shots of a setup, by id, in the order of the file. */
export const shotsOf = (ledger: Ledger, setup: string): readonly string[] =>
  ledger.cell(`shots of|${setup}`, () => ledger.keys('shots').filter((shot) => ledger.at(`shots/${shot}/setup`) === setup));

/** The days on which a setup is shot. */
export const daysOf = (ledger: Ledger, setup: string): readonly string[] =>
  ledger.cell(`days of|${setup}`, () => [...new Set(shotsOf(ledger, setup).flatMap((shot) => (ledger.at(`shots/${shot}/day`) as string | undefined) ?? []))]);

/** The figure of a setup's days that is worst: lowest temperature, brightest light. `undefined` where no day states it. */
export function worstOfDays(ledger: Ledger, setup: string, key: string, worse: (a: number, b: number) => boolean): Figure | undefined {
  const stated = daysOf(ledger, setup).flatMap((day) => shootFigure(ledger, `days/${day}/${key}`) ?? []);
  return stated.reduce<Figure | undefined>((worst, one) => (worst === undefined || worse(one.value, worst.value) ? one : worst), undefined);
}

export const lower = (a: number, b: number): boolean => a < b;
export const higher = (a: number, b: number): boolean => a > b;
