import { assume } from '../../shoot/ledger/figures.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { carry } from '../../standards/assumptions/carry.ts';
import type { Lot } from './casePacking.ts';
import type { FlightItem } from './flightKit.ts';

/** What one person carries into the cabin. */
export interface CabinBag {
  readonly person: string;
  readonly lots: readonly Lot<FlightItem>[];
  /** With the bag itself. */
  readonly massG: number;
  /** Over what one person may carry: packs may go nowhere else. */
  readonly over: boolean;
}

export interface Cabin {
  readonly bags: readonly CabinBag[];
  readonly noRoom: readonly Lot<FlightItem>[];
  readonly packsLeft: readonly Lot<FlightItem>[];
}

interface Filling {
  readonly person: string;
  readonly lots: Lot<FlightItem>[];
  readonly spares: Map<string, number>;
  roomG: number;
}

/**
 * Packs first, as many of each class as a person may carry; then what is dear and breaks, dearest first, to whoever has most room,
 * so that the bags come out alike. What finds no room goes in the hold; packs that find no person stay.
 */
export function fillCabin(ledger: Ledger, people: number, lots: readonly Lot<FlightItem>[]): Cabin {
  const limitG = assume(ledger, carry.cabinG).value;
  const bagG = assume(ledger, carry.cabinBagG).value;
  const names = crewNames(ledger);
  const filling = Array.from({ length: people }, (_, at): Filling => ({ person: names[at] ?? `person ${at + 1}`, lots: [], spares: new Map(), roomG: limitG - bagG }));
  const byMass = (a: Lot<FlightItem>, b: Lot<FlightItem>) => b.eachG - a.eachG;
  const packsLeft = lots.filter(({ of }) => of.goes === 'pack').toSorted(byMass).flatMap((lot) => sharePacks(filling, lot));
  const dear = lots.filter(({ of }) => of.goes === 'cabin').toSorted((a, b) => a.of.rank - b.of.rank || byMass(a, b));
  const noRoom = dear.flatMap((lot) => (lot.of.tooLargeForCabin ? lot : shareRoom(filling, lot)));
  const bags = filling.map(({ person, lots: own, roomG }) => ({ person, lots: own, massG: limitG - roomG, over: roomG < -1e-6 }));
  return { bags: bags.filter((bag) => bag.lots.length > 0), noRoom, packsLeft };
}

/** A pack where no energy is entered counts to the largest number a person may carry. */
const MOST_SPARES = 20;

function sharePacks(people: readonly Filling[], lot: Lot<FlightItem>): Lot<FlightItem>[] {
  const name = lot.of.carriage?.name ?? 'to 100 Wh';
  const spares = lot.of.carriage?.spares ?? MOST_SPARES;
  let left = lot.count;
  while (left > 0) {
    const next = people.filter((one) => (one.spares.get(name) ?? 0) < spares).toSorted((a, b) => b.roomG - a.roomG)[0];
    if (next === undefined) break;
    next.spares.set(name, (next.spares.get(name) ?? 0) + 1);
    give(next, lot, 1);
    left -= 1;
  }
  return left === 0 ? [] : [{ ...lot, count: left }];
}

function shareRoom(people: readonly Filling[], lot: Lot<FlightItem>): Lot<FlightItem>[] {
  let left = lot.count;
  while (left > 0) {
    const next = people.toSorted((a, b) => b.roomG - a.roomG)[0];
    const fits = next === undefined ? 0 : Math.floor((next.roomG * (1 + 1e-9)) / lot.eachG);
    if (next === undefined || fits < 1) break;
    // A fair share at a time, so that a thousand of one thing do not take a thousand turns.
    const some = Math.min(left, fits, Math.ceil(left / people.length));
    give(next, lot, some);
    left -= some;
  }
  return left === 0 ? [] : [{ ...lot, count: left }];
}

function give(to: Filling, lot: Lot<FlightItem>, count: number): void {
  const at = to.lots.findIndex(({ of }) => of === lot.of);
  if (at === -1) to.lots.push({ ...lot, count });
  else to.lots[at] = { ...lot, count: (to.lots[at]?.count ?? 0) + count };
  to.roomG -= count * lot.eachG;
}

const crewNames = (ledger: Ledger): readonly string[] =>
  ledger.keys('crew').map((id) => ((ledger.at(`crew/${id}/name`) ?? ledger.at(`crew/${id}/role`)) as string | undefined) ?? id);
