import type { Figure } from '../../shoot/ledger/figures.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { power as assumed } from '../../standards/assumptions/power.ts';
import type { Asking } from '../Asking.ts';
import { shootFigure } from './shootFigures.ts';

/** One stretch of a day: a take, or the time before and between takes. */
export interface DayStretch {
  readonly shot: string;
  readonly setup: string;
  readonly glass: string;
  readonly hours: number;
  readonly take: boolean;
}

export interface DayPlan {
  readonly stretches: readonly DayStretch[];
  readonly workHours: Figure;
  /** The shots take longer than the day is. */
  readonly overrunHours: number;
}

export interface ShotTimes {
  readonly takes: number;
  readonly takeHours: number;
  readonly resetHours: number;
  /** All takes and the times between them. */
  readonly hours: number;
}

/** How long a shot goes on: what it states, else the defaults. */
export function shotTimes(asking: Asking, shot: string): ShotTimes {
  return asking.ledger.cell(`shot times|${shot}`, () => timesOf(asking, `shots/${shot}`));
}

function timesOf(asking: Asking, path: string): ShotTimes {
  const takes = (asking.ledger.at(`${path}/takes`) as number | undefined) ?? Math.round(asking.assume(assumed.takes).value);
  const takeHours = (shootFigure(asking.ledger, `${path}/takeMin`) ?? asking.assume(assumed.takeMin)).value / 60;
  const resetHours = (shootFigure(asking.ledger, `${path}/resetMin`) ?? asking.assume(assumed.resetMin)).value / 60;
  return { takes, takeHours, resetHours, hours: takes * takeHours + (takes - 1) * resetHours };
}

/** The shots of a day in their order. */
export const shotsOfDay = (ledger: Ledger, day: string): readonly string[] =>
  ledger.cell(`shots of day|${day}`, () => {
    const order = (shot: string) => (ledger.at(`shots/${shot}/order`) as number | undefined) ?? Infinity;
    return ledger.keys('shots').filter((shot) => ledger.at(`shots/${shot}/day`) === day).toSorted((a, b) => order(a) - order(b) || 0);
  });

/** A day from first to last power: what the shots do not take is spread evenly before them, as time to set up. */
export function dayPlan(asking: Asking, day: string): DayPlan {
  return asking.ledger.cell(`day plan|${day}`, () => {
    const shots = shotsOfDay(asking.ledger, day).map((shot) => ({ shot, times: shotTimes(asking, shot) }));
    const workHours = shootFigure(asking.ledger, `days/${day}/workHours`) ?? asking.assume(assumed.workHours);
    const shooting = shots.reduce((sum, { times }) => sum + times.hours, 0);
    const before = Math.max(0, workHours.value - shooting) / Math.max(1, shots.length);
    const stretches = shots.flatMap(({ shot, times }) => {
      const base = { shot, setup: asking.ledger.at(`shots/${shot}/setup`) as string, glass: asking.ledger.at(`shots/${shot}/glass`) as string };
      const one = (hours: number, take: boolean): DayStretch[] => (hours > 0 ? [{ ...base, hours, take }] : []);
      const takes = Array.from({ length: times.takes }, (_, at) => [...(at === 0 ? [] : one(times.resetHours, false)), ...one(times.takeHours, true)]);
      return [...one(before, false), ...takes.flat()];
    });
    return { stretches, workHours, overrunHours: Math.max(0, shooting - workHours.value) };
  });
}
