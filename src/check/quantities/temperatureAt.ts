import { type Figure, figureOf } from '../../shoot/ledger/figures.ts';
import type { StatedFigure } from '../../shoot/schema/basics.ts';
import { power } from '../../standards/assumptions/power.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { shotsWith } from './lightThrough.ts';

/** The air a shot is made in; without a shot, the coldest that a glass meets in a setup, or in the whole shoot where no shot uses it. */
export function temperatureAt(asking: Asking, subject: SetupGlass & { readonly shot?: string }): Figure {
  const { ledger } = asking;
  const shots = subject.shot === undefined ? shotsWith(asking, subject) : [subject.shot];
  const days = shots.length > 0 ? shots.flatMap((shot) => (ledger.at(`shots/${shot}/day`) as string | undefined) ?? []) : ledger.keys('days');
  const stated = [...new Set(days)].flatMap((day) => temperatureOf(asking, day) ?? []);
  return stated.reduce<Figure | undefined>((coldest, one) => (coldest === undefined || one.value < coldest.value ? one : coldest), undefined) ?? asking.assume(power.temperatureC);
}

function temperatureOf({ ledger }: Asking, day: string): Figure | undefined {
  const path = `days/${day}/temperatureC`;
  const stated = ledger.at(path) as StatedFigure | undefined;
  return stated === undefined ? undefined : figureOf(stated, path, 'sheet');
}
