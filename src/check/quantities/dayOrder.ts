import { swapOrder } from '../../calc/mechanics/swapOrder.ts';
import { NoAnswer } from '../../calc/calculator.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { shotsOfDay } from './dayPlan.ts';
import { lensChange } from './lensChange.ts';

/** Shots of a day that stay together, in the order in which they are listed. */
export interface ShotBlock {
  readonly name: string;
  readonly shots: readonly string[];
}

export interface DayOrder {
  /** Along the shots as they are listed, blocks torn apart or not. */
  readonly plannedMin: number;
  readonly best: readonly ShotBlock[];
  readonly bestMin: number;
  readonly method: 'exact' | 'heuristic';
  readonly atLeastMin: number;
}

/** The order of a day's shots as planned and the one with least work; a text where the constraints allow none. `undefined`: nothing to order. */
export function dayOrder(asking: Asking, day: string): DayOrder | string | undefined {
  return asking.ledger.cell(`day order|${day}`, () => {
    const shotsInTurn = shotsOfDay(asking.ledger, day);
    const planned = blocksOf(asking, shotsInTurn);
    if (planned.length < 2) return undefined;
    const within = planned.reduce((sum, { shots }) => sum + minutesAlong(asking, shots), 0);
    const costsMin = planned.map((from) => planned.map((to) => (from === to ? 0 : between(asking, from.shots.at(-1) ?? '', to.shots[0] ?? ''))));
    const blocks = planned.map(({ name, shots }) => ({ name, after: [...new Set(shots.flatMap((shot) => comesAfter(asking, planned, name, shot)))] }));
    try {
      const found = swapOrder({ blocks, costsMin });
      return {
        plannedMin: minutesAlong(asking, shotsInTurn), best: found.order.flatMap((name) => planned.find((one) => one.name === name) ?? []), bestMin: found.totalMin + within, method: found.method, atLeastMin: found.atLeastMin + within,
      };
    } catch (thrown) {
      if (thrown instanceof NoAnswer) return thrown.message;
      throw thrown;
    }
  });
}

/** Shots that name a block stay together where its first one stands; others are blocks by themselves. */
function blocksOf({ ledger }: Asking, shots: readonly string[]): ShotBlock[] {
  const blocks = new Map<string, string[]>();
  for (const shot of shots) {
    const block = ledger.at(`shots/${shot}/block`) as string | undefined;
    const key = block === undefined ? `shot ${shot}` : `block ${block}`;
    blocks.set(key, [...(blocks.get(key) ?? []), shot]);
  }
  return [...blocks].map(([name, own]) => ({ name, shots: own }));
}

const comesAfter = ({ ledger }: Asking, blocks: readonly ShotBlock[], own: string, shot: string): string[] =>
  ((ledger.at(`shots/${shot}/after`) ?? []) as readonly string[]).flatMap((before) => blocks.filter(({ name, shots }) => name !== own && shots.includes(before)).map(({ name }) => name));

const glassOfShot = ({ ledger }: Asking, shot: string): SetupGlass => ({ setup: ledger.at(`shots/${shot}/setup`) as string, glass: ledger.at(`shots/${shot}/glass`) as string });

const between = (asking: Asking, from: string, to: string): number => lensChange(asking, glassOfShot(asking, from), glassOfShot(asking, to)).minutes;

/** Minutes of all changes along a row of shots. */
export const minutesAlong = (asking: Asking, shots: readonly string[]): number => shots.slice(1).reduce((sum, shot, at) => sum + between(asking, shots[at] ?? '', shot), 0);
